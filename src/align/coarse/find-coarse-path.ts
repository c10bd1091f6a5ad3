import type { Part } from '../../score/index.js';
import type { PitchGrid } from '../grid/pitch-grid.js';
import { planSearch } from './plan-search.js';
import { poolGrid } from './pool-grid.js';
import { searchPath } from './search-path.js';
import { tracePath } from './trace-path.js';
import type { CoarsePath } from './types.js';

/**
 * Finds the most likely way through the part: forwards note by note, with notes passed over, jumps back and ahead, and
 * sound before and after that belongs to none.
 *
 * @param grid evidence a frame
 * @param part the part; grace notes are passed over freely
 * @param offsetSemitones whole semitones by which the take sounds above the part
 * @returns the runs in order of time and the share of sounding time that fits
 *
 * Source: Viterbi search over note states (Rabiner 1989), jump transitions from one best state a frame.
 */
export function findCoarsePath(grid: PitchGrid, part: Part, offsetSemitones: number): CoarsePath {
  const pooled = poolGrid(grid);
  const plan = planSearch(part, grid, pooled, offsetSemitones);
  return tracePath(searchPath(pooled, plan), pooled, plan);
}
