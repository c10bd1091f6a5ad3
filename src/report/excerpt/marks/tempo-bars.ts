import type { ResultFinding } from '../../../result/index.js';
import type { Part, PerformedBar } from '../../../score/index.js';

/** A stretch of so many bars is shown whole; of a longer one its beginning and its end are enough. */
const MOST_WHOLE = 4;
const AT_AN_END = 2;

/** Performed bars that stand in one line, one after the other in print. */
export interface TempoLine {
  readonly bars: readonly PerformedBar[];
  /** which bars stay when there is no room for all */
  readonly keep: 'first' | 'last';
}

/**
 * @param kind of a finding
 * @returns true when the finding is about tempo over bars rather than about a note
 */
export function isAboutTempo(kind: ResultFinding['kind']): boolean {
  return kind === 'rushing' || kind === 'dragging' || kind === 'off-tempo';
}

/**
 * Which bars let a finding about tempo be seen: a short stretch whole, of a long one the first bars and the last ones; of
 * the whole take its beginning.
 *
 * @param finding about tempo
 * @param part the part
 * @returns one line or two; none when the part has no such bar
 */
export function tempoBars({ kind, bar, toBar, pass }: ResultFinding, part: Part): TempoLine[] {
  if (kind === 'off-tempo') return [{ bars: run(part.bars.slice(0, AT_AN_END)), keep: 'first' }];
  const from = part.bars.findIndex((one) => one.bar === bar && one.pass === pass);
  if (from < 0) return [];
  const to = part.bars.findIndex((one, i) => i >= from && one.bar === (toBar ?? bar));
  const stretch = part.bars.slice(from, Math.max(from, to) + 1);
  const first = run(stretch);
  if (first.length === stretch.length && stretch.length <= MOST_WHOLE) return [{ bars: stretch, keep: 'first' }];
  return [
    { bars: first.slice(0, AT_AN_END), keep: 'first' },
    { bars: run(stretch.toReversed(), -1).slice(0, AT_AN_END).toReversed(), keep: 'last' },
  ];
}

/** The bars from the first one on that follow each other in print. */
function run(bars: readonly PerformedBar[], step: 1 | -1 = 1): readonly PerformedBar[] {
  const end = bars.findIndex((one, i) => i > 0 && one.barIndex !== (bars[i - 1]?.barIndex ?? 0) + step);
  return end < 0 ? bars : bars.slice(0, end);
}
