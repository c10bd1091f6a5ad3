import type { Features } from '../../features/index.js';
import type { MeasureContext } from '../context/context.js';
import { paceAround } from '../context/pace-around.js';
import type { EmptyPlaceMeasure } from '../types.js';

const SIDE_NOTES = 8;
const LEAST_PAIRS = 4;
const FRAME_SECONDS = 0.02;
/** The end of the place is the attack of the next note and is left out. */
const NEXT_ATTACK_SECONDS = 0.03;

/**
 * What sounds where notes that were not heard should stand: silence there says that they were left out, sound says that
 * they may only not have been made out.
 *
 * @param context part and alignment
 * @returns one entry a note left out that stands alone between two notes that were heard
 */
export function measureEmptyPlaces(context: MeasureContext): EmptyPlaceMeasure[] {
  const { part, alignment } = context;
  return part.notes.flatMap((note): EmptyPlaceMeasure[] => {
    const before = alignment.notes[note.index - 1];
    const after = alignment.notes[note.index + 1];
    if (alignment.notes[note.index]!.status !== 'left-out' || note.grace) return [];
    if (before?.onsetSeconds === undefined || after?.onsetSeconds === undefined) return [];
    if (alignment.restarts.some((r) => r.resumedAtIndex === note.index || r.resumedAtIndex === note.index + 1))
      return [];
    const secondsAQuarter = paceBeside(context, note.index);
    if (secondsAQuarter === null) return [];
    const quarters = part.notes[note.index + 1]!.onsetQuarters - part.notes[note.index - 1]!.onsetQuarters;
    const between = after.onsetSeconds - before.onsetSeconds;
    const from = before.offsetSeconds!;
    return [
      {
        index: note.index,
        silentSeconds: Math.max(0, after.onsetSeconds - from),
        writtenSeconds: note.durationQuarters * secondsAQuarter,
        closedUpShare: 1 - between / (quarters * secondsAQuarter),
        fallDb: fallDb(context.features, before.onsetSeconds, from, after.onsetSeconds - NEXT_ATTACK_SECONDS),
      },
    ];
  });
}

/** Seconds a quarter on both sides of a note; no pair spans it, for the music may have closed up over it. */
function paceBeside(context: MeasureContext, index: number): number | null {
  const sides = [
    paceAround(context, index - SIDE_NOTES, index - 1),
    paceAround(context, index + 1, index + SIDE_NOTES),
  ].filter((side) => side.pairs > 0);
  const pairs = sides.reduce((sum, side) => sum + side.pairs, 0);
  if (pairs < LEAST_PAIRS) return null;
  return sides.reduce((sum, side) => sum + side.pairs * side.secondsAQuarter, 0) / pairs;
}

/** How far the level has fallen by the end of a place, below what stood before it. */
function fallDb(features: Features, onset: number, from: number, to: number): number {
  if (to - from < FRAME_SECONDS) return 0;
  const held = level(features, onset, from);
  return Math.max(0, held - level(features, (from + to) / 2, to));
}

/** Mean power between two moments, dB. */
function level({ power, levelHopSeconds: hop }: Features, from: number, to: number): number {
  const first = Math.max(0, Math.round(from / hop));
  const last = Math.min(power.length, Math.max(first + 1, Math.round(to / hop)));
  let sum = 0;
  for (let f = first; f < last; f++) sum += power[f]!;
  return 10 * Math.log10(sum / Math.max(1, last - first) + 1e-12);
}
