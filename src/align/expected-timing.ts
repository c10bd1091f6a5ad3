import { median } from '../base/index.js';
import type { PartNote } from '../score/index.js';

/** Notes on each side from which the local tempo is read. */
const SIDE_NOTES = 6;
const SHORTEST_SECONDS_A_QUARTER = 0.15;
const LONGEST_SECONDS_A_QUARTER = 4;

/**
 * Local pace at each note of a piece, robust against misplaced notes and pauses.
 *
 * @param notes notes of the piece, in order
 * @param onsets rough onset of each in seconds, NaN where unknown
 * @param fallback seconds a quarter where nothing can be read
 * @returns seconds a quarter at each note
 *
 * Source: median of slopes (Theil 1950) over neighbouring notes.
 */
export function localPace(notes: readonly PartNote[], onsets: readonly number[], fallback: number): Float64Array {
  const known = notes.map((_, i) => i).filter((i) => Number.isFinite(onsets[i]!));
  const pace = new Float64Array(notes.length).fill(fallback);
  for (let i = 0; i < notes.length; i++) {
    const near = known.filter((k) => Math.abs(k - i) <= SIDE_NOTES);
    const slopes: number[] = [];
    for (const a of near) {
      for (const b of near) {
        const quarters = notes[b]!.onsetQuarters - notes[a]!.onsetQuarters;
        if (b > a && quarters > 0) slopes.push((onsets[b]! - onsets[a]!) / quarters);
      }
    }
    const slope = slopes.length >= 3 ? median(slopes) : fallback;
    pace[i] = Math.min(LONGEST_SECONDS_A_QUARTER, Math.max(SHORTEST_SECONDS_A_QUARTER, slope));
  }
  return pace;
}

/** A rough onset is misplaced when it lies this far from where both its neighbours expect it, the same way. */
const LEAST_MISPLACED_SECONDS = 0.3;
const MISPLACED_SHARE = 0.6;

/**
 * Rough onsets that contradict both their neighbours are unknown.
 *
 * @param notes notes of the piece, in order
 * @param onsets rough onset of each in seconds, NaN where unknown
 * @param pace seconds a quarter at each note
 * @returns the onsets, misplaced ones NaN
 */
export function dropMisplaced(notes: readonly PartNote[], onsets: readonly number[], pace: Float64Array): number[] {
  const kept = [...onsets];
  const known = () => kept.map((_, i) => i).filter((i) => Number.isFinite(kept[i]!));
  let order = known();
  for (let k = 1; k < order.length - 1; k++) {
    const [a, i, b] = [order[k - 1]!, order[k]!, order[k + 1]!];
    const early = surprise(notes, kept, pace, a, i);
    const late = surprise(notes, kept, pace, i, b);
    if (early === 0 || late === 0 || Math.sign(early) === Math.sign(late)) continue;
    kept[i] = Number.NaN;
    order = known();
    k = Math.max(0, k - 2);
  }
  return kept;
}

/** By how many seconds the time between two notes differs from what the pace asks for; 0 when that is nothing unusual. */
function surprise(
  notes: readonly PartNote[],
  onsets: readonly number[],
  pace: Float64Array,
  a: number,
  b: number,
): number {
  const expected = (notes[b]!.onsetQuarters - notes[a]!.onsetQuarters) * pace[a]!;
  const off = onsets[b]! - onsets[a]! - expected;
  return Math.abs(off) > Math.max(LEAST_MISPLACED_SECONDS, MISPLACED_SHARE * expected) ? off : 0;
}
