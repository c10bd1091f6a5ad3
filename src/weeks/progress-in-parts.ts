import { codeAsData, type Failure, groupBy, type Language } from '../base/index.js';
import { failureSaid } from '../words/index.js';
import { numbersOfBlind } from './blind-numbers.js';
import { isDay, weekOf } from './calendar.js';
import { countOnce } from './count-once.js';
import { findGaps } from './find-gaps.js';
import { foldName } from './fold-name.js';
import { type Deviations, followPlayer } from './follow-player.js';
import { measuresOf } from './measures-of.js';
import {
  etudeSchema,
  type ProgressEtude,
  type ProgressPlayer,
  type ProgressResult,
  playerSchema,
  progressResultSchema,
} from './progress-result-schema.js';
import { sectionOverWeeks } from './section-over-weeks.js';
import { sectionShare } from './section-share.js';
import { type Etude, type Played, sortEtudes } from './sort-etudes.js';
import { takesUnplaced } from './takes-unplaced.js';
import type { KeptResult, LostTake, PlacedResult } from './types.js';

/** Everything the document is assembled from. */
export interface ProgressInput {
  readonly tool: { readonly name: string; readonly version: string };
  /** in code point order of their files */
  readonly results: readonly KeptResult[];
  /** takes that could not be read when they were reviewed */
  readonly lost: readonly LostTake[];
  /** results that could not be read now */
  readonly failures: readonly { readonly file: string; readonly code: string; readonly fault: Failure }[];
  /** of all that is told in sentences; English when it is left out */
  readonly language?: Language | undefined;
}

/** The document, in which players are made when they are come to: thousands of them need not be in memory at once. */
export interface ProgressInParts {
  readonly about: Omit<ProgressResult, 'pieces'>;
  readonly pieces: readonly PieceInParts[];
}

/** An étude with all who played it. */
export interface PieceInParts {
  readonly about: Omit<ProgressEtude, 'players' | 'section'>;
  readonly count: number;
  /** how many results stand behind players from one place to before another, in the order of their names */
  readonly takes: (from: number, to: number) => number;
  /** these players, made anew whenever they are asked for */
  readonly players: (from: number, to: number) => Iterable<ProgressPlayer>;
  /** these players together */
  readonly section: (from: number, to: number) => ProgressEtude['section'];
}

/**
 * Brings results of many weeks together, player by player.
 *
 * @param given what is kept of the results, and what is missing
 * @returns the document in parts; the same input gives the same parts
 *
 * Noise as in `noise.ts`.
 */
export function progressInParts(given: ProgressInput): ProgressInParts {
  const { language = 'en' } = given;
  const { blind, ...known } = numbersOfBlind(given.results, given.lost);
  const input = { ...given, ...known };
  const once = sortEtudes(input.results).map((etude) => {
    const { results, repeated } = countOnce(etude.results);
    return { etude: { ...etude, results }, repeated };
  });
  const played = once.map(({ etude }) => ({ etude, players: playersOf(etude.results) }));
  const measures = measuresOf(played, language);
  const deviations = Object.fromEntries(measures.map((one) => [one.measure, one.noise.standardDeviation]));
  const lost = stillLost(input);
  const about = progressResultSchema.omit({ pieces: true }).parse({
    format: 'progress-result',
    version: 1,
    tool: { name: input.tool.name, version: input.tool.version },
    language,
    ...(blind === null ? {} : { blind }),
    toolVersions: [...new Set(input.results.map(({ result }) => result.toolVersion))].sort(),
    takes: once.reduce((sum, { etude }) => sum + etude.results.length, 0),
    measures,
    unplaced: takesUnplaced(played, lost),
    repeated: once.flatMap(({ repeated }) => repeated),
    failures: input.failures.map(({ file, code, fault }) => {
      return { file, code, message: failureSaid(language, fault), fault: codeAsData(fault) };
    }),
  });
  return { about, pieces: played.map((one) => pieceOf(one, deviations as Deviations, lost, language)) };
}

function playersOf(results: readonly KeptResult[]): PlacedResult[][] {
  const placed = results.flatMap((found): PlacedResult[] => {
    const { player, date } = found.result.take;
    return player === null || date === null || !isDay(date) ? [] : [{ ...found, player, date }];
  });
  return [...groupBy(placed, ({ player }) => foldName(player))]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, all]) => all);
}

function pieceOf(
  { etude, players }: Played,
  deviations: Deviations,
  lost: readonly LostTake[],
  language: Language,
): PieceInParts {
  const bars = barsOf(etude);
  const weeks = [...new Set(players.flat().map(({ date }) => weekOf(date)))].sort();
  const lostHere = lost.filter((one) => etude.files.some(({ sha256 }) => sha256 === one.scoreSha256));
  // Rounded here already: the section's medians are those of the numbers that the document gives.
  const follow = (placed: readonly PlacedResult[]): ProgressPlayer =>
    playerSchema.parse({
      ...followPlayer(placed, bars, deviations, language),
      gaps: findGaps(placed, lostHere, weeks, language),
    });
  const { title, part, notes, files, change } = etude;
  return {
    about: etudeSchema.omit({ players: true, section: true }).parse({
      ...{ title, part, bars, notes, change },
      files: files.map((file) => ({ ...file })),
    }),
    count: players.length,
    takes: (from, to) => players.slice(from, to).reduce((sum, placed) => sum + placed.length, 0),
    players: (from, to) => made(players.slice(from, to), follow),
    section: (from, to) =>
      etudeSchema.shape.section.parse(
        sectionOverWeeks(
          Array.from(made(players.slice(from, to), follow), (player) => sectionShare(player)),
          bars,
        ),
      ),
  };
}

function* made<T, U>(values: readonly T[], make: (value: T) => U): Generator<U> {
  for (const value of values) yield make(value);
}

/** Bars in the order in which they are first played. */
function barsOf({ results }: Etude): readonly string[] {
  return results.toSorted((a, b) => b.result.notes - a.result.notes)[0]?.result.bars ?? [];
}

/** A take that could not be read once but was reviewed later is not lost. */
function stillLost({ results, lost }: ProgressInput): LostTake[] {
  const reviewed = new Set(results.map(({ result }) => keyOf(result.take.file, result.score.sha256)));
  const different = new Map(lost.map((one) => [keyOf(one.file, one.scoreSha256), one]));
  return [...different.values()].filter((one) => !reviewed.has(keyOf(one.file, one.scoreSha256)));
}

const keyOf = (file: string, sha256: string) => JSON.stringify([file.split('/').at(-1), sha256]);
