import type { NoteContext } from '../context/context.js';

/** Peaks so near the highest one are at the same ceiling. */
const CEILING_DB = 0.6;
const LEAST_NOTES = 12;

/**
 * How many notes peak at one and the same height, as under a limiter.
 *
 * @param context the take with its notes measured
 * @returns share of the notes, 0 to 1; 0 when there are too few to tell
 */
export function ceilingShare({ alignment, features }: NoteContext): number {
  const { peak, levelHopSeconds: hop } = features;
  const peaks = alignment.notes.flatMap(({ onsetSeconds, offsetSeconds }) => {
    if (onsetSeconds === undefined || offsetSeconds === undefined) return [];
    let most = 0;
    for (let f = Math.round(onsetSeconds / hop); f < Math.round(offsetSeconds / hop); f++) {
      most = Math.max(most, peak[f] ?? 0);
    }
    return [most];
  });
  if (peaks.length < LEAST_NOTES) return 0;
  let highest = 0;
  for (const value of peaks) highest = Math.max(highest, value);
  const ceiling = highest * 10 ** (-CEILING_DB / 20);
  return peaks.filter((value) => value >= ceiling).length / peaks.length;
}
