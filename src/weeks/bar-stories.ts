import { byCodePoint, groupBy } from '../base/index.js';
import type { Criterion } from '../judge/index.js';
import { isOfABar } from './kinds-of-trouble.js';
import type { BarStory } from './progress-result-schema.js';
import { type DayMark, storyOf } from './story-of.js';
import type { KeptTake, Trouble } from './types.js';

/** One day's reviewed takes. */
export interface DayOfResults {
  readonly date: string;
  readonly results: readonly KeptTake[];
}

const WORST_FIRST: readonly DayMark[] = ['fix', 'watch', 'clear'];

/**
 * What became of each bar that had something to fix on some day. A bar and a criterion make one story. On a day with
 * several takes the worst of them counts, so that a bar is free only when it was free in all of them. A bar is free when
 * it was played, the criterion was judged, and nothing was found there.
 *
 * @param days days in order, each with at least one reviewed take
 * @param bars the étude's bars in order
 * @returns stories in the order of the bars, then of the criteria's names
 */
export function barStories(days: readonly DayOfResults[], bars: readonly string[]): BarStory[] {
  const troubles = days.flatMap(({ results }) => results.flatMap((result) => result.troubles.filter(isOfABar)));
  const order = new Map(bars.map((bar, i) => [bar, i]));
  return [...groupBy(troubles, ({ bar, criterion }) => JSON.stringify([bar, criterion])).values()]
    .flatMap((found) => {
      const { bar, criterion, kind } = found.at(-1) as Trouble;
      const marks = days.map((day) => markOf(day, bar, criterion));
      return marks.includes('fix') ? [{ bar, criterion, kind, ...storyOf(marks, days) }] : [];
    })
    .sort((a, b) => (order.get(a.bar) ?? 0) - (order.get(b.bar) ?? 0) || byCodePoint(a.criterion, b.criterion));
}

function markOf({ results }: DayOfResults, bar: string, criterion: Criterion): DayMark {
  const marks = results.map((result) => markInTake(result, bar, criterion));
  return WORST_FIRST.find((mark) => marks.includes(mark)) ?? 'not-judged';
}

function markInTake(take: KeptTake, bar: string, criterion: Criterion): DayMark {
  const here = take.troubles.filter((one) => one.bar === bar && one.criterion === criterion && isOfABar(one));
  if (here.some(({ weight }) => weight === 'fix')) return 'fix';
  if (here.length > 0) return 'watch';
  const played = take.bars.includes(bar) && !take.barsNotPlayed.includes(bar);
  return take.judged.includes(criterion) && played ? 'clear' : 'not-judged';
}
