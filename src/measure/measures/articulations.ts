import { quantile, robustSpread } from '../../base/index.js';
import type { Part, PartNote } from '../../score/index.js';
import type { MeasureContext } from '../context/context.js';
import type { ArticulationMeasure, TransitionMeasure, WayOfPlaying } from '../types.js';

/** Ways of playing in the order in which they are listed, shortest first. */
const WAYS: readonly WayOfPlaying[] = [
  'staccatissimo',
  'staccato',
  'slur-end-short',
  'detached-legato',
  'tongued',
  'tenuto',
  'slurred',
];

/** Fewer notes do not say how far they differ. */
const LEAST_TO_SPREAD = 6;
/** Half the width of a 95 % interval in standard errors, and the share of the data that a median deviation makes use of. */
const NORMAL_95 = 1.96;
const EFFICIENCY = 0.37;

/**
 * How much of its time a note sounds, for each way of playing that the part asks for: the lengths that tell
 * articulations apart.
 *
 * @param context part and alignment
 * @param transitions how each note goes over into the next
 * @returns one entry a way of playing that was heard, shortest as written first; shares 0 to 1
 *
 * The middle half of the notes stands beside the median so that one note does not count. Dots or
 * lines under a slur are detached legato (common practice).
 */
export function measureArticulations(
  context: MeasureContext,
  transitions: readonly TransitionMeasure[],
): ArticulationMeasure[] {
  const { part, alignment } = context;
  const shares = new Map<WayOfPlaying, number[]>();
  for (const t of transitions) {
    const way = wayOf(part, part.notes[t.index]!, part.notes[t.toIndex]!);
    const asWritten = [t.index, t.toIndex].every((i) => alignment.notes[i]!.status === 'as-written');
    if (way !== null && asWritten) shares.set(way, [...(shares.get(way) ?? []), t.soundedShare]);
  }
  return WAYS.flatMap((way): ArticulationMeasure[] => {
    const all = shares.get(way);
    if (all === undefined) return [];
    const middleHalf = [quantile(all, 0.25), quantile(all, 0.75)] as const;
    const spread = all.length < LEAST_TO_SPREAD ? {} : { spread: spreadOf(all) };
    return [{ way, count: all.length, soundedShare: quantile(all, 0.5), middleHalf, ...spread }];
  });
}

/** Source: standard error of a standard deviation, σ ÷ √(2n), with the efficiency of Rousseeuw & Croux 1993 (37 %). */
function spreadOf(shares: readonly number[]): { share: number; interval: readonly [number, number] } {
  const share = robustSpread(shares);
  const half = (NORMAL_95 * share) / Math.sqrt(2 * EFFICIENCY * shares.length);
  return { share, interval: [Math.max(0, share - half), share + half] };
}

/** How the part asks for a note to be held; null where its end cannot be told from a rest, a breath or a fermata. */
function wayOf(part: Part, note: PartNote, next: PartNote): WayOfPlaying | null {
  if (note.fermata || note.breathAfter !== null || next.restBeforeQuarters > 0 || next.heldRestBefore === true)
    return null;
  const has = (mark: PartNote['articulations'][number]) => note.articulations.includes(mark);
  if (note.slurredToNext) return has('staccato') || has('tenuto') ? 'detached-legato' : 'slurred';
  if (has('staccatissimo')) return 'staccatissimo';
  if (has('staccato') && note.slurredFromPrevious) return 'slur-end-short';
  if (has('staccato') && has('tenuto')) return 'detached-legato';
  if (has('staccato')) return 'staccato';
  if (has('detached-legato')) return 'detached-legato';
  if (has('tenuto')) return 'tenuto';
  return part.notes[note.index + 1] === next ? 'tongued' : null;
}
