import type { Part } from '../score/index.js';
import { findCoarsePath } from './coarse/find-coarse-path.js';
import type { CoarsePath } from './coarse/types.js';
import type { PitchGrid } from './grid/pitch-grid.js';

/**
 * A take that fits this well is taken as it is, without trying other pitches, if it is heard most at the pitches that are
 * written: a take an octave up fits well too, for every tone repeats after two of its periods as well as after one.
 */
const GOOD_FIT = 0.55;
const CANDIDATES_TRIED = 4;
/** Semitones tried each way; the grid reaches this far beyond the part. */
export const WIDEST_OFFSET = 14;

/** A whole take may sound an octave off, or as the concert-pitch part. */
export interface FittedPath {
  readonly path: CoarsePath;
  readonly offsetSemitones: number;
}

/**
 * @param grid evidence of pitch
 * @param part the part
 * @returns the path, and by how many semitones the take sounds above the part
 *
 * Offsets worth trying come from the correlation of played and written pitch histograms.
 */
export function findFittedPath(grid: PitchGrid, part: Part): FittedPath {
  let best: FittedPath = { path: findCoarsePath(grid, part, 0), offsetSemitones: 0 };
  const offsets = likelyOffsets(grid, part);
  if (best.path.fit >= GOOD_FIT && offsets[0] === 0) return best;
  for (const offsetSemitones of offsets) {
    if (offsetSemitones === 0) continue;
    const path = findCoarsePath(grid, part, offsetSemitones);
    if (path.fit > best.path.fit + 0.05) best = { path, offsetSemitones };
  }
  return best;
}

/** Offsets at which the pitches heard are most like those written, the likeliest first. */
function likelyOffsets(grid: PitchGrid, part: Part): number[] {
  const played = new Float64Array(grid.pitches);
  grid.strongest.forEach((midi, f) => {
    if (midi >= 0) played[midi - grid.lowestMidi] = played[midi - grid.lowestMidi]! + grid.voicing[f]!;
  });
  const written = new Float64Array(grid.pitches);
  for (const n of part.notes) {
    const row = n.soundingMidi - grid.lowestMidi;
    written[row] = written[row]! + n.durationQuarters;
  }
  const scored: { offset: number; score: number }[] = [];
  for (let offset = -WIDEST_OFFSET; offset <= WIDEST_OFFSET; offset++) {
    let score = 0;
    for (let p = 0; p < grid.pitches; p++) score += Math.sqrt(written[p]! * (played[p + offset] ?? 0));
    scored.push({ offset, score });
  }
  scored.sort((a, b) => b.score - a.score);
  return scored.slice(0, CANDIDATES_TRIED).map((s) => s.offset);
}
