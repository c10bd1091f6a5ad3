import type { AlignedNote } from '../../align/index.js';
import type { Features } from '../../features/index.js';
import type { MeasureContext } from '../context/context.js';
import { paceAround } from '../context/pace-around.js';
import type { TransitionMeasure } from '../types.js';

/** Notes on each side from which the local pace is read. */
const SIDE_NOTES = 8;
const LEAST_PAIRS = 4;
/** Onsets further apart than this belong to no one phrase. */
const LONGEST_SECONDS = 8;

/**
 * How each note goes over into the next: time between the onsets against the local pace, how much of it sounds, and the
 * gap of silence.
 *
 * @param context part and alignment
 * @returns one entry a pair of neighbouring notes that were both played, one right after the other
 */
export function measureTransitions(context: MeasureContext): TransitionMeasure[] {
  const { part, alignment } = context;
  const played = part.notes.filter((n) => !n.grace);
  return played.slice(1).flatMap((next, k): TransitionMeasure[] => {
    const note = played[k]!;
    const from = alignment.notes[note.index]!;
    const to = alignment.notes[next.index]!;
    if (from.onsetSeconds === undefined || from.offsetSeconds === undefined || to.onsetSeconds === undefined) return [];
    const betweenOnsetsSeconds = to.onsetSeconds - from.onsetSeconds;
    if (!(betweenOnsetsSeconds > 0) || betweenOnsetsSeconds > LONGEST_SECONDS) return [];
    if (isInterrupted(context, note.index, next.index)) return [];
    const pace = paceAround(context, note.index - SIDE_NOTES, next.index + SIDE_NOTES);
    const expectedSeconds = (next.onsetQuarters - note.onsetQuarters) * pace.secondsAQuarter;
    return [
      {
        index: note.index,
        toIndex: next.index,
        betweenOnsetsSeconds,
        gapSeconds: Math.max(0, to.onsetSeconds - from.offsetSeconds),
        dipDb: dipBetween(context.features, from, to),
        soundedShare: Math.min(1, (from.offsetSeconds - from.onsetSeconds) / betweenOnsetsSeconds),
        ...(pace.pairs < LEAST_PAIRS ? {} : { expectedSeconds, secondsAQuarter: pace.secondsAQuarter }),
      },
    ];
  });
}

/** Whether anything but the two notes lies between them: a restart, a note that is not in the part. */
function isInterrupted(context: MeasureContext, index: number, toIndex: number): boolean {
  const { restarts, added } = context.alignment;
  return (
    restarts.some((r) => r.resumedAtIndex === toIndex) ||
    added.some((a) => a.afterIndex >= index && a.afterIndex < toIndex)
  );
}

const DIP_MARGIN_SECONDS = 0.02;
const DIP_SIDE_SECONDS = 0.12;
const DIP_FRAME_SECONDS = 0.01;

/** Lowest level around the change of notes, below the loudest on each side of it; 0 when there is no dip. */
function dipBetween(features: Features, from: AlignedNote, to: AlignedNote): number {
  const start = Math.max(from.onsetSeconds!, from.offsetSeconds! - DIP_MARGIN_SECONDS);
  const end = to.onsetSeconds! + DIP_MARGIN_SECONDS;
  const { lowest } = levelsBetween(features, start, end);
  const before = levelsBetween(features, Math.max(from.onsetSeconds!, start - DIP_SIDE_SECONDS), start).loudest;
  const after = levelsBetween(features, end, Math.min(to.offsetSeconds!, end + DIP_SIDE_SECONDS)).loudest;
  const dip = Math.min(before, after) - lowest;
  return Number.isFinite(dip) ? Math.max(0, dip) : 0;
}

/** Lowest and loudest level, dBFS, of the frames between two times; ∞ and −∞ where there is no frame. */
function levelsBetween(
  features: Features,
  fromSeconds: number,
  toSeconds: number,
): { readonly lowest: number; readonly loudest: number } {
  const { power, levelHopSeconds: hop } = features;
  const length = Math.max(1, Math.round(DIP_FRAME_SECONDS / hop));
  let lowest = Number.POSITIVE_INFINITY;
  let loudest = Number.NEGATIVE_INFINITY;
  for (
    let f = Math.round(fromSeconds / hop);
    f + length <= Math.round(toSeconds / hop) + 1 && f + length <= power.length;
    f++
  ) {
    let sum = 0;
    for (let k = f; k < f + length; k++) sum += power[k]!;
    const level = 10 * Math.log10(sum / length + 1e-12);
    if (level < lowest) lowest = level;
    if (level > loudest) loudest = level;
  }
  return { lowest, loudest };
}
