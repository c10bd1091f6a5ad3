import { median } from '../../base/index.js';
import type { MeasureContext } from './context.js';

/** Shorter times between onsets say little about the pace, and are used only when there are few others. */
const LEAST_QUARTERS = 0.45;
const LEAST_LONG_PAIRS = 6;

/**
 * Seconds a quarter around a stretch of the part, from pairs of onsets that no fermata, breath, bend or restart lies
 * between.
 *
 * @param context part and alignment
 * @param fromIndex first note looked at
 * @param toIndex last note looked at
 * @returns seconds a quarter and how many pairs it rests on; NaN and 0 when there are none
 *
 * Source: median of slopes (Theil 1950).
 */
export function paceAround(
  context: MeasureContext,
  fromIndex: number,
  toIndex: number,
): { readonly secondsAQuarter: number; readonly pairs: number } {
  const slopes: number[] = [];
  const shortSlopes: number[] = [];
  for (let a = Math.max(0, fromIndex); a <= toIndex; a++) {
    for (let b = a + 1; b <= Math.min(toIndex, context.part.notes.length - 1); b++) {
      if (!isSteady(context, b - 1)) break;
      const slope = slopeOf(context, a, b);
      if (slope === null) continue;
      const quarters = context.part.notes[b]!.onsetQuarters - context.part.notes[a]!.onsetQuarters;
      (quarters < LEAST_QUARTERS ? shortSlopes : slopes).push(slope);
    }
  }
  const used = slopes.length >= LEAST_LONG_PAIRS ? slopes : [...slopes, ...shortSlopes];
  return { secondsAQuarter: used.length === 0 ? Number.NaN : median(used), pairs: used.length };
}

/** Whether time runs on evenly from this note to the next. */
function isSteady(context: MeasureContext, index: number): boolean {
  const { part, alignment } = context;
  const note = part.notes[index]!;
  if (note.fermata || note.breathAfter !== null) return false;
  if (part.tempoBends.some((b) => note.onsetQuarters >= b.startQuarters && note.onsetQuarters < b.endQuarters))
    return false;
  return !alignment.restarts.some((r) => r.resumedAtIndex === index + 1);
}

function slopeOf(context: MeasureContext, a: number, b: number): number | null {
  const { part, alignment } = context;
  const quarters = part.notes[b]!.onsetQuarters - part.notes[a]!.onsetQuarters;
  const from = alignment.notes[a]!.onsetSeconds;
  const to = alignment.notes[b]!.onsetSeconds;
  if (quarters <= 0 || from === undefined || to === undefined || part.notes[a]!.grace || part.notes[b]!.grace)
    return null;
  return (to - from) / quarters;
}
