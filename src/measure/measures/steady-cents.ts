import { median } from '../../base/index.js';

/** Two pitches lie so far apart, in cents: half of the smallest step, which tuning and vibrato can take from it. */
const TWO_PITCHES_CENTS = 50;
/** What lasts a shorter share of a note is its beginning or its end, not a pitch of its own. */
const PITCH_SHARE = 0.2;

/**
 * @param cents the pitch of a note, frame by frame in time order, at least one
 * @returns median of its steady part; null where the note holds two pitches, as where the next note was taken for it
 *
 * Source: median by definition; the place where two levels part best is that of least squares, the usual
 * test for one change of level (from memory).
 */
export function steadyCents(cents: readonly number[]): number | null {
  if (Math.max(...cents) - Math.min(...cents) < TWO_PITCHES_CENTS) return median(cents);
  const at = bestParting(cents);
  const [before, after] = [cents.slice(0, at), cents.slice(at)];
  if (before.length === 0 || Math.abs(median(before) - median(after)) < TWO_PITCHES_CENTS) return median(cents);
  const [short, long] = before.length < after.length ? [before, after] : [after, before];
  return short.length < PITCH_SHARE * cents.length ? median(long) : null;
}

/** Where the means of what lies before and behind are furthest apart, for their numbers; 0 where there is no such place. */
function bestParting(cents: readonly number[]): number {
  const mean = cents.reduce((sum, c) => sum + c, 0) / cents.length;
  let [sum, best, place] = [0, 0, 0];
  for (let n = 1; n < cents.length; n++) {
    sum += cents[n - 1]! - mean;
    const gain = (sum * sum) / (n * (cents.length - n));
    if (gain > best) [best, place] = [gain, n];
  }
  return place;
}
