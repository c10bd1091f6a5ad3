import type { DayOfResults } from './bar-stories.js';
import { isThroughout } from './kinds-of-trouble.js';
import type { BarStory, Followed, Goal, ProgressPlayer } from './progress-result-schema.js';
import type { Trouble } from './types.js';

/**
 * The one goal for the next lesson: what the latest take's own page tells first of what is to fix, with all bars that wait
 * for the same; where nothing is to fix, what slipped back, what has to be heard again, and what is only worth a listen.
 *
 * @param days days in order, each with at least one reviewed take
 * @param player stories and measures of these days
 * @returns the goal, null when no take was reviewed
 */
export function nextGoal(
  days: readonly DayOfResults[],
  { bars, throughout, measures }: Pick<ProgressPlayer, 'bars' | 'throughout' | 'measures'>,
): Goal | null {
  const latest = days.at(-1);
  if (latest === undefined) return null;
  return (
    goalOf(firstToFix(latest), bars) ??
    slipped(measures) ??
    toHearAgain(bars) ??
    toListenTo(bars, throughout) ?? { about: 'keep' }
  );
}

/** The last take of the day goes first, and each in the order of its page. */
function firstToFix({ results }: DayOfResults): Trouble | undefined {
  return [...results]
    .reverse()
    .flatMap(({ troubles }) => troubles)
    .find(({ weight }) => weight === 'fix');
}

function goalOf(finding: Trouble | undefined, bars: readonly BarStory[]): Goal | null {
  if (finding === undefined) return null;
  const { kind } = finding;
  if (isThroughout(finding)) return { about: 'throughout', kind };
  const same = bars.filter((story) => story.kind === kind && story.days.at(-1) === 'fix');
  return { about: 'bars', kind, bars: barsOf(same.length === 0 ? [finding] : same) };
}

function slipped(measures: readonly Followed[]): Goal | null {
  const worse = measures.find(({ sinceFirst }) => sinceFirst?.verdict === 'worse');
  return worse === undefined ? null : { about: 'measure', measure: worse.measure };
}

function toHearAgain(bars: readonly BarStory[]): Goal | null {
  const unheard = bars.filter(({ status }) => status === 'not-judged');
  return unheard.length === 0 ? null : { about: 'hear-again', bars: barsOf(unheard) };
}

function toListenTo(bars: readonly BarStory[], throughout: ProgressPlayer['throughout']): Goal | null {
  const eased = bars.filter(({ status }) => status === 'eased');
  const kind = (eased[0] ?? throughout.find(({ status }) => status === 'eased'))?.kind;
  if (kind === undefined) return null;
  return { about: 'listen', kind, bars: barsOf(eased.filter((story) => story.kind === kind)) };
}

const barsOf = (places: readonly { readonly bar: string }[]) => [...new Set(places.map(({ bar }) => bar))];
