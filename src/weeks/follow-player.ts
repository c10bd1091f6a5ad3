import { byCodePoint, groupBy, isMeasured, type Language, type MaybeNumber, notMeasured } from '../base/index.js';
import { toldNumber } from '../result/index.js';
import type { MeasureId } from '../standards/index.js';
import { barStories, type DayOfResults } from './bar-stories.js';
import { besideSlurred } from './beside-slurred.js';
import { weekOf } from './calendar.js';
import { compareDays } from './compare-days.js';
import { usualSpelling } from './fold-name.js';
import { MEASURES, type Measure } from './measures.js';
import { nextGoal } from './next-goal.js';
import { smallestChange } from './noise.js';
import type { Followed, ProgressPlayer } from './progress-result-schema.js';
import { storiesThroughout } from './stories-throughout.js';
import type { PlacedResult } from './types.js';

/** Standard deviation of one take, a number a measure. */
export type Deviations = Readonly<Record<MeasureId, number>>;

/** The numbers of one measure on one day: of each take that has one, and their mean or the reason why there is none. */
interface DayNumber {
  readonly date: string;
  readonly takes: readonly number[];
  readonly value: MaybeNumber;
}

/**
 * @param placed one player's results of one étude
 * @returns the reviewed ones by day, in order
 */
export function reviewedDays(placed: readonly PlacedResult[]): DayOfResults[] {
  const reviewed = placed.filter(({ result }) => result.outcome === 'reviewed');
  return [...groupBy(reviewed, ({ date }) => date)]
    .sort(([a], [b]) => byCodePoint(a, b))
    .map(([date, results]) => ({ date, results: results.map(({ result }) => result) }));
}

/**
 * One player with one étude over the days.
 *
 * @param placed one player's results of one étude, at least one
 * @param bars the étude's bars in order
 * @param deviations noise of each measure
 * @param language in which reasons are told
 * @returns the player's part of the document, gaps left empty
 */
export function followPlayer(
  placed: readonly PlacedResult[],
  bars: readonly string[],
  deviations: Deviations,
  language: Language,
): ProgressPlayer {
  const days = reviewedDays(placed);
  const figures = days.map(({ results }) => results.flatMap(({ figures: found }) => found ?? []));
  const spellings = placed.map(({ player }) => player);
  const followedDays = {
    measures: MEASURES.map((measure) => {
      const numbers = days.map(({ date }, i) => dayNumber(date, figures[i]?.map((one) => one[measure.id]) ?? []));
      return followed(measure, numbers, deviations[measure.id], language);
    }),
    bars: barStories(days, bars),
    throughout: storiesThroughout(days),
  };
  const beside = besideSlurred(days, language);
  return {
    player: usualSpelling(spellings),
    spellings: [...new Set(spellings)].sort(),
    days: days.map(({ date, results }) => ({ date, week: weekOf(date), takes: results.length })),
    ...followedDays,
    ...(beside === undefined ? {} : { besideSlurred: beside }),
    goal: nextGoal(days, followedDays),
    gaps: [],
  };
}

function dayNumber(date: string, all: readonly MaybeNumber[]): DayNumber {
  const takes = all.filter(isMeasured<number>);
  if (takes.length > 0) return { date, takes, value: takes.reduce((sum, one) => sum + one, 0) / takes.length };
  return { date, takes, value: all[0] ?? notMeasured('not-reviewed') };
}

function followed(measure: Measure, days: readonly DayNumber[], deviation: number, language: Language): Followed {
  const known = days.filter(({ takes }) => takes.length > 0);
  const sinceFirst = changeBetween(measure, known[0], known.at(-1), deviation);
  return {
    measure: measure.id,
    days: days.map(({ date, value, takes }) => ({ date, value: toldNumber(language, value), takes: [...takes] })),
    sinceFirst,
    sinceLast: changeBetween(measure, known.at(-2), known.at(-1), deviation),
    course: sinceFirst === null ? null : sinceFirst.verdict === 'none' ? courseOf(known, deviation) : 'changed',
  };
}

/** Stable when no day left the noise around the first. */
function courseOf(known: readonly DayNumber[], deviation: number): 'stable' | 'to-and-fro' {
  const [first] = known;
  const stays = known.every(({ value, takes }) => {
    if (first === undefined || !isMeasured<number>(value) || !isMeasured<number>(first.value)) return true;
    return Math.abs(value - first.value) <= smallestChange(deviation, first.takes.length, takes.length);
  });
  return stays ? 'stable' : 'to-and-fro';
}

function changeBetween(
  measure: Measure,
  from: DayNumber | undefined,
  to: DayNumber | undefined,
  deviation: number,
): Followed['sinceFirst'] {
  if (from === undefined || to === undefined || from === to) return null;
  if (!isMeasured<number>(from.value) || !isMeasured<number>(to.value)) return null;
  const smallest = smallestChange(deviation, from.takes.length, to.takes.length);
  return {
    from: from.date,
    to: to.date,
    difference: to.value - from.value,
    smallest,
    verdict: compareDays(from.value, to.value, smallest, measure.wanted),
  };
}
