import { groupBy } from '../base/index.js';
import type { DayOfResults } from './bar-stories.js';
import { isThroughout } from './kinds-of-trouble.js';
import type { ProgressPlayer } from './progress-result-schema.js';
import { type DayMark, storyOf } from './story-of.js';
import type { KeptTake, Trouble } from './types.js';

const WORST_FIRST: readonly DayMark[] = ['fix', 'watch', 'clear'];

/**
 * What became of what was to fix in the playing as a whole: the tempo, the tuning. A kind makes one story; the worst take
 * of a day counts, as with bars.
 *
 * @param days days in order, each with at least one reviewed take
 * @returns stories in the order in which they first came up
 */
export function storiesThroughout(days: readonly DayOfResults[]): ProgressPlayer['throughout'] {
  const troubles = days.flatMap(({ results }) => results.flatMap((result) => result.troubles.filter(isThroughout)));
  return [...groupBy(troubles, ({ kind }) => kind).values()].flatMap((found) => {
    const { kind, criterion } = found[0] as Trouble;
    const marks = days.map(({ results }) => {
      const here = results.map((result) => markInTake(result, { kind, criterion }));
      return WORST_FIRST.find((mark) => here.includes(mark)) ?? 'not-judged';
    });
    return marks.includes('fix') ? [{ kind, criterion, ...storyOf(marks, days) }] : [];
  });
}

function markInTake({ troubles, judged }: KeptTake, { kind, criterion }: Pick<Trouble, 'kind' | 'criterion'>): DayMark {
  const here = troubles.filter((one) => one.kind === kind);
  if (here.some(({ weight }) => weight === 'fix')) return 'fix';
  if (here.length > 0) return 'watch';
  return judged.includes(criterion) ? 'clear' : 'not-judged';
}
