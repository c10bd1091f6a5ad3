import { codeAsData, type Failure, groupBy, isMeasured, type Language } from '../base/index.js';
import { toldReason } from '../result/index.js';
import { failureSaid } from '../words/index.js';
import { numbersOfBlind } from './blind-numbers.js';
import { isDay, weekOf } from './calendar.js';
import { countOnce } from './count-once.js';
import { figuresOf } from './figures-of.js';
import { findGaps } from './find-gaps.js';
import { foldName } from './fold-name.js';
import { type Deviations, followPlayer, reviewedDays } from './follow-player.js';
import { MEASURES } from './measures.js';
import { moderatedDeviation, smallestChange, type WithinDays, withinDays, workingDeviation } from './noise.js';
import { measureSchema, type ProgressResult, playerSchema, progressResultSchema } from './progress-result-schema.js';
import { sectionOverWeeks } from './section-over-weeks.js';
import { type Etude, sortEtudes } from './sort-etudes.js';
import type { FoundResult, LostTake, PlacedResult } from './types.js';

/** Everything the document is assembled from. */
export interface ProgressInput {
  readonly tool: { readonly name: string; readonly version: string };
  /** in code point order of their files */
  readonly results: readonly FoundResult[];
  /** takes that could not be read when they were reviewed */
  readonly lost: readonly LostTake[];
  /** results that could not be read now */
  readonly failures: readonly { readonly file: string; readonly code: string; readonly fault: Failure }[];
  /** of all that is told in sentences; English when it is left out */
  readonly language?: Language | undefined;
}

/** An étude and its players' results, by folded name. */
interface Played {
  readonly etude: Etude;
  readonly players: readonly (readonly PlacedResult[])[];
}

/**
 * Brings results of many weeks together, player by player.
 *
 * @param given results and what is missing
 * @returns the document; the same input gives the same document
 *
 * Noise as in `noise.ts`.
 */
export function toProgressResult(given: ProgressInput): ProgressResult {
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
  return progressResultSchema.parse({
    format: 'progress-result',
    version: 1,
    tool: { name: input.tool.name, version: input.tool.version },
    language,
    ...(blind === null ? {} : { blind }),
    toolVersions: [...new Set(input.results.map(({ result }) => result.tool.version))].sort(),
    takes: once.reduce((sum, { etude }) => sum + etude.results.length, 0),
    measures,
    pieces: played.map((one) => etudeOf(one, deviations as Deviations, lost, language)),
    unplaced: unplacedOf(played, lost),
    repeated: once.flatMap(({ repeated }) => repeated),
    failures: input.failures.map(({ file, code, fault }) => {
      return { file, code, message: failureSaid(language, fault), fault: codeAsData(fault) };
    }),
  });
}

function playersOf(results: readonly FoundResult[]): PlacedResult[][] {
  const placed = results.flatMap((found): PlacedResult[] => {
    const { player, date } = found.result.take;
    return player === null || date === null || !isDay(date) ? [] : [{ ...found, player, date }];
  });
  return [...groupBy(placed, ({ player }) => foldName(player))]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, all]) => all);
}

function measuresOf(played: readonly Played[], language: Language): ProgressResult['measures'] {
  const days = played
    .flatMap(({ players }) => players.flatMap((placed) => reviewedDays(placed)))
    .map(({ results }) => results.map((result) => figuresOf(result)));
  return MEASURES.map(({ id, criterion, unit, wanted, usual, noise }) => {
    const found = withinDays(days.map((takes) => takes.map((one) => one[id]).filter(isMeasured<number>)));
    const standardDeviation = moderatedDeviation(found, workingDeviation(noise));
    // Rounded here already: what days are compared by is the number that the document gives.
    return measureSchema.parse({
      measure: id,
      criterion,
      unit,
      wanted,
      usual,
      noise: {
        standardDeviation,
        smallestChange: smallestChange(standardDeviation),
        working: noise,
        fromTakes: scatterOf(found, language),
      },
    });
  });
}

function scatterOf({ standardDeviation, degreesOfFreedom, days }: WithinDays, language: Language) {
  const known =
    degreesOfFreedom > 0 ? standardDeviation : toldReason(language, { code: 'no-second-take-of-a-day', facts: {} });
  return { standardDeviation: known, degreesOfFreedom, days };
}

function etudeOf(
  { etude, players }: Played,
  deviations: Deviations,
  lost: readonly LostTake[],
  language: Language,
): ProgressResult['pieces'][number] {
  const bars = barsOf(etude);
  const weeks = [...new Set(players.flat().map(({ date }) => weekOf(date)))].sort();
  const lostHere = lost.filter((one) => etude.files.some(({ sha256 }) => sha256 === one.scoreSha256));
  // Rounded here already: the section's medians are those of the numbers that the document gives.
  const followed = players.map((placed) =>
    playerSchema.parse({
      ...followPlayer(placed, bars, deviations, language),
      gaps: findGaps(placed, lostHere, weeks, language),
    }),
  );
  const { title, part, notes, files, change } = etude;
  return {
    ...{ title, part, bars, notes, change },
    files: files.map((file) => ({ ...file })),
    players: followed,
    section: sectionOverWeeks(followed, bars),
  };
}

/** Bars in the order in which they are first played. */
function barsOf({ results }: Etude): string[] {
  const fullest = results.map(({ result }) => result.notes).toSorted((a, b) => b.length - a.length)[0] ?? [];
  return [...new Set(fullest.map((note) => note.bar))];
}

/** A take that could not be read once but was reviewed later is not lost. */
function stillLost({ results, lost }: ProgressInput): LostTake[] {
  const reviewed = new Set(results.map(({ result }) => keyOf(result.take.file, result.score.sha256)));
  const different = new Map(lost.map((one) => [keyOf(one.file, one.scoreSha256), one]));
  return [...different.values()].filter((one) => !reviewed.has(keyOf(one.file, one.scoreSha256)));
}

const keyOf = (file: string, sha256: string) => JSON.stringify([file.split('/').at(-1), sha256]);

function unplacedOf(played: readonly Played[], lost: readonly LostTake[]): ProgressResult['unplaced'] {
  const isPlaced = (one: LostTake) =>
    played.some(
      ({ etude, players }) =>
        one.player !== null &&
        etude.files.some(({ sha256 }) => sha256 === one.scoreSha256) &&
        players.some((placed) => foldName(placed[0]?.player ?? '') === foldName(one.player ?? '')),
    );
  const takes = played.flatMap(({ etude, players }) => {
    const placed = new Set(players.flat().map(({ result }) => result));
    return etude.results.filter(({ result }) => !placed.has(result));
  });
  return [
    ...takes.map(({ file, result: { take, outcome } }) => ({ file, player: take.player, date: take.date, outcome })),
    ...lost
      .filter((one) => !isPlaced(one))
      .map(({ file, player, date }) => ({ file, player, date, outcome: 'failed' as const })),
  ];
}
