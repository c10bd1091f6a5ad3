import type { Part } from '../../score/index.js';
import type { PitchGrid } from '../grid/pitch-grid.js';
import { planSearch } from './plan-search.js';
import { poolGrid } from './pool-grid.js';
import { searchPath } from './search-path.js';
import { tracePath } from './trace-path.js';
import type { CoarsePath } from './types.js';

/** Where less of the part was played than this, or more, the pace expected at first was wrong, and the way is looked for again. */
const LEAST_TIMES = 0.75;
const MOST_TIMES = 1.4;
/** Of less than this nothing is known of the pace. */
const LEAST_KNOWN = 0.05;

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
  const search = (times: number): CoarsePath => {
    const plan = planSearch(part, grid, pooled, offsetSemitones, times);
    return tracePath(searchPath(pooled, plan), pooled, plan);
  };
  const first = search(1);
  const times = timesPlayed(first, part);
  return times >= LEAST_TIMES && times <= MOST_TIMES ? first : search(Math.max(LEAST_KNOWN, times));
}

/** How much of the part the runs go over, 1 for all of it once. */
function timesPlayed({ runs }: CoarsePath, { notes }: Part): number {
  const quarters = (from: number, to: number): number =>
    notes.slice(from, to + 1).reduce((sum, n) => sum + (n.grace ? 0 : n.durationQuarters), 0);
  return runs.reduce((sum, run) => sum + quarters(run.firstNote, run.lastNote), 0) / quarters(0, notes.length - 1);
}
