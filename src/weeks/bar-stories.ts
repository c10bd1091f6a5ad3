import { groupBy } from '../base/index.js';
import type { Criterion, FindingKind } from '../judge/index.js';
import type { ResultFinding, TakeResult } from '../result/index.js';
import type { BarStory } from './progress-result-schema.js';

/** What stands in a bar on one day. */
type BarDay = BarStory['days'][number];

/** One day's reviewed takes. */
export interface DayOfResults {
  readonly date: string;
  readonly results: readonly TakeResult[];
}

/** Findings of these kinds are about more than the bar they begin in. */
const NOT_OF_A_BAR: ReadonlySet<FindingKind> = new Set(['tuning-off', 'off-tempo', 'rushing', 'dragging', 'went-well']);
const WORST_FIRST: readonly BarDay[] = ['fix', 'watch', 'clear'];

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
      const latest = found.at(-1) as ResultFinding;
      const marks = days.map((day) => markOf(day, latest.bar, latest.criterion));
      return marks.includes('fix') ? [storyOf(latest, marks, days)] : [];
    })
    .sort((a, b) => (order.get(a.bar) ?? 0) - (order.get(b.bar) ?? 0) || (a.criterion < b.criterion ? -1 : 1));
}

const isOfABar = (finding: ResultFinding) => !NOT_OF_A_BAR.has(finding.kind);

/** A finding that others go before counts as what it is by itself. */
const weightOf = (finding: ResultFinding) => finding.ownWeight ?? finding.weight;

function markOf({ results }: DayOfResults, bar: string, criterion: Criterion): BarDay {
  const marks = results.map((result) => markInTake(result, bar, criterion));
  return WORST_FIRST.find((mark) => marks.includes(mark)) ?? 'not-judged';
}

function markInTake(result: TakeResult, bar: string, criterion: Criterion): BarDay {
  const here = result.findings.filter((one) => one.bar === bar && one.criterion === criterion && isOfABar(one));
  if (here.some((finding) => weightOf(finding) === 'fix')) return 'fix';
  if (here.length > 0) return 'watch';
  const judged = result.criteria.some((line) => line.criterion === criterion && line.judged !== false);
  const skipped = (index: number) => result.skips.some((skip) => skip.fromIndex <= index && index < skip.toIndex);
  const played = result.notes.some((note) => note.bar === bar && note.status !== 'left-out' && !skipped(note.index));
  return judged && played ? 'clear' : 'not-judged';
}

function storyOf(latest: ResultFinding, marks: readonly BarDay[], days: readonly DayOfResults[]): BarStory {
  const now = marks.at(-1) as BarDay;
  const judged = marks.flatMap((mark, i) => (mark === 'not-judged' ? [] : [{ mark, date: days[i]?.date ?? null }]));
  const run = judged.slice(judged.findLastIndex(({ mark }) => mark !== now) + 1);
  return {
    bar: latest.bar,
    criterion: latest.criterion,
    kind: latest.kind,
    status: statusOf(marks),
    days: [...marks],
    since: now === 'not-judged' ? null : (run[0]?.date ?? null),
  };
}

function statusOf(marks: readonly BarDay[]): BarStory['status'] {
  const now = marks.at(-1) as BarDay;
  if (now === 'not-judged') return 'not-judged';
  const before = marks.slice(0, -1).filter((mark) => mark !== 'not-judged');
  if (now === 'clear') return 'fixed';
  if (now === 'watch') return 'eased';
  if (before.length === 0) return 'seen';
  const firstFix = before.indexOf('fix');
  if (firstFix < 0) return before.includes('watch') ? 'grown' : 'new';
  return before.slice(firstFix).includes('clear') ? 'returning' : 'still';
}
