import type { BarStory } from './progress-result-schema.js';

/** What stands in a place on one day. */
export type DayMark = BarStory['days'][number];

/**
 * @param marks what stands in a place, one a day, at least one of them to fix
 * @param days their days, in order
 * @returns how it stands on the latest day, and since when
 */
export function storyOf(
  marks: readonly DayMark[],
  days: readonly { readonly date: string }[],
): Pick<BarStory, 'status' | 'days' | 'since'> {
  const now = marks.at(-1) as DayMark;
  const judged = marks.flatMap((mark, i) => (mark === 'not-judged' ? [] : [{ mark, date: days[i]?.date ?? null }]));
  const run = judged.slice(judged.findLastIndex(({ mark }) => mark !== now) + 1);
  return {
    status: statusOf(marks),
    days: [...marks],
    since: now === 'not-judged' ? null : (run[0]?.date ?? null),
  };
}

function statusOf(marks: readonly DayMark[]): BarStory['status'] {
  const now = marks.at(-1) as DayMark;
  if (now === 'not-judged') return 'not-judged';
  const before = marks.slice(0, -1).filter((mark) => mark !== 'not-judged');
  if (now === 'clear') return 'fixed';
  if (now === 'watch') return 'eased';
  if (before.length === 0) return 'seen';
  const firstFix = before.indexOf('fix');
  if (firstFix < 0) return before.includes('watch') ? 'grown' : 'new';
  return before.slice(firstFix).includes('clear') ? 'returning' : 'still';
}
