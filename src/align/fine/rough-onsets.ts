import type { PartNote } from '../../score/index.js';

/**
 * Unknown onsets lie between their known neighbours as the score says, or by the pace.
 *
 * @param notes notes of a piece
 * @param onsets rough onsets in seconds, NaN where unknown
 * @param pace seconds a quarter at each note
 * @returns an onset for every note
 */
export function fillOnsets(notes: readonly PartNote[], onsets: readonly number[], pace: Float64Array): number[] {
  const rough = [...onsets];
  let before = -1;
  for (let n = 0; n < rough.length; n++) {
    if (Number.isFinite(rough[n]!)) {
      before = n;
      continue;
    }
    const after = rough.findIndex((t, k) => k > n && Number.isFinite(t));
    rough[n] = between(notes, rough, pace, n, before, after);
    before = n;
  }
  return rough;
}

function between(
  notes: readonly PartNote[],
  rough: readonly number[],
  pace: Float64Array,
  n: number,
  before: number,
  after: number,
): number {
  const here = notes[n]!.onsetQuarters;
  if (before >= 0 && after >= 0) {
    const from = notes[before]!.onsetQuarters;
    const share = (here - from) / Math.max(1e-6, notes[after]!.onsetQuarters - from);
    return rough[before]! + share * (rough[after]! - rough[before]!);
  }
  const known = before >= 0 ? before : after;
  return known < 0 ? Number.NaN : rough[known]! + (here - notes[known]!.onsetQuarters) * pace[n]!;
}
