import { groupBy } from '../base/index.js';
import type { Criterion } from '../judge/index.js';
import type { TakeResult } from '../result/index.js';
import { isOfABar, type Trouble, weightOf } from './kinds-of-trouble.js';
import type { BarStory } from './progress-result-schema.js';
import { type DayMark, storyOf } from './story-of.js';

/** One day's reviewed takes. */
export interface DayOfResults {
  readonly date: string;
  readonly results: readonly TakeResult[];
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
  const troubles = days.flatMap(({ results }) => results.flatMap((result) => result.findings.filter(isOfABar)));
  const order = new Map(bars.map((bar, i) => [bar, i]));
  return [...groupBy(troubles, ({ bar, criterion }) => JSON.stringify([bar, criterion])).values()]
    .flatMap((found) => {
      const { bar, criterion, kind } = found.at(-1) as Trouble;
      const marks = days.map((day) => markOf(day, bar, criterion));
      return marks.includes('fix') ? [{ bar, criterion, kind, ...storyOf(marks, days) }] : [];
    })
    .sort((a, b) => (order.get(a.bar) ?? 0) - (order.get(b.bar) ?? 0) || (a.criterion < b.criterion ? -1 : 1));
}

function markOf({ results }: DayOfResults, bar: string, criterion: Criterion): DayMark {
  const marks = results.map((result) => markInTake(result, bar, criterion));
  return WORST_FIRST.find((mark) => marks.includes(mark)) ?? 'not-judged';
}

function markInTake(result: TakeResult, bar: string, criterion: Criterion): DayMark {
  const here = result.findings.filter((one) => one.bar === bar && one.criterion === criterion && isOfABar(one));
  if (here.some((finding) => weightOf(finding) === 'fix')) return 'fix';
  if (here.length > 0) return 'watch';
  const judged = result.criteria.some((line) => line.criterion === criterion && line.judged !== false);
  const skipped = (index: number) => result.skips.some((skip) => skip.fromIndex <= index && index < skip.toIndex);
  const played = result.notes.some((note) => note.bar === bar && note.status !== 'left-out' && !skipped(note.index));
  return judged && played ? 'clear' : 'not-judged';
}
