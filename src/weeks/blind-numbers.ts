import { groupBy } from '../base/index.js';
import type { ProgressResult } from './progress-result-schema.js';
import type { KeptResult, LostTake } from './types.js';

/** Results and lost takes in which a number is only called a player where it stands for one. */
export interface NumbersOfBlind {
  readonly results: readonly KeptResult[];
  readonly lost: readonly LostTake[];
  /** null when no result is blind */
  readonly blind: NonNullable<ProgressResult['blind']> | null;
}

/**
 * Deals with results that have numbers instead of names. A number holds within one folder only: the same number in another
 * folder may be anybody. In a folder in which no number has two days, numbers may as well stand for takes of unknown
 * players, and even where they stand for players there is nothing to follow: its takes have no player here. Where players
 * of several such folders can be followed, the folder stands beside the number.
 *
 * @param results in code point order of their files
 * @param lost takes that could not be read when they were reviewed
 * @returns the same, players renamed or taken away where they are numbers
 */
export function numbersOfBlind(results: readonly KeptResult[], lost: readonly LostTake[]): NumbersOfBlind {
  const byPlace = groupBy(
    results.filter(({ result }) => result.take.blind),
    placeOf,
  );
  if (byPlace.size === 0) return { results, lost, blind: null };
  const names = namesOf(byPlace);
  const followed = [...byPlace].filter(([, found]) => canBeFollowed(found)).map(([place]) => place);
  const playerIn = (place: string, number: string | null): string | null => {
    if (number === null || !followed.includes(place)) return null;
    return followed.length > 1 ? `${number} (${names.get(place)})` : number;
  };
  const named = (places: readonly string[]) => places.map((place) => names.get(place) ?? place);
  return {
    results: results.map((found) => {
      const { take } = found.result;
      if (!take.blind) return found;
      const player = playerIn(placeOf(found), take.player);
      return { ...found, result: { ...found.result, take: { ...take, player } } };
    }),
    lost: lost.map((one) =>
      one.place === undefined || !byPlace.has(one.place) ? one : { ...one, player: playerIn(one.place, one.player) },
    ),
    blind: {
      followed: named(followed),
      apart: named([...byPlace.keys()].filter((place) => !followed.includes(place))),
    },
  };
}

/** The folder that `review` wrote to: results lie in `takes` below it. */
const folderOf = (file: string) =>
  file
    .split('/')
    .slice(0, -1)
    .join('/')
    .replace(/\/takes$/, '');

const placeOf = ({ file, place }: KeptResult) => place ?? folderOf(file);

/** Folders as they are shown; of the same name, the second is called so. */
function namesOf(byPlace: ReadonlyMap<string, readonly KeptResult[]>): Map<string, string> {
  const taken = new Map<string, number>();
  return new Map(
    [...byPlace].map(([place, [first]]) => {
      const folder = folderOf(first?.file ?? '');
      const times = (taken.get(folder) ?? 0) + 1;
      taken.set(folder, times);
      return [place, times === 1 ? folder : `${folder}, ${times}`];
    }),
  );
}

/** Whether some number has takes of several days. */
function canBeFollowed(found: readonly KeptResult[]): boolean {
  return [...groupBy(found, ({ result }) => result.take.player).values()].some(
    (takes) => new Set(takes.map(({ result }) => result.take.date).filter((date) => date !== null)).size > 1,
  );
}
