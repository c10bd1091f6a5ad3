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
  const { part, alignment } = context;
  const slopes: number[] = [];
  const shortSlopes: number[] = [];
  const last = Math.min(toIndex, part.notes.length - 1);
  /** so far time runs on evenly from the first note of the pair */
  let end = 0;
  for (let a = Math.max(0, fromIndex); a < last; a++) {
    end = Math.max(end, a);
    while (end < last && isSteady(context, end)) end++;
    const from = alignment.notes[a]!.onsetSeconds;
    if (from === undefined || part.notes[a]!.grace) continue;
    for (let b = a + 1; b <= end; b++) {
      const quarters = part.notes[b]!.onsetQuarters - part.notes[a]!.onsetQuarters;
      const to = alignment.notes[b]!.onsetSeconds;
      if (quarters <= 0 || to === undefined || part.notes[b]!.grace) continue;
      (quarters < LEAST_QUARTERS ? shortSlopes : slopes).push((to - from) / quarters);
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
  for (const { startQuarters, endQuarters } of part.tempoBends) {
    if (note.onsetQuarters >= startQuarters && note.onsetQuarters < endQuarters) return false;
  }
  return !alignment.restarts.some((r) => r.resumedAtIndex === index + 1);
}
