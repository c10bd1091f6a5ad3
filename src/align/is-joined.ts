import type { PitchGrid } from './grid/pitch-grid.js';

const AFTER_SECONDS = 0.03;
const SIDE_SECONDS = 0.12;
/** A level that dips by more than this between two notes is a break, however short. */
const DIP_DB = 5;

/**
 * Whether sound goes on through the moment at which one note becomes the next.
 *
 * @param grid levels a pitch frame
 * @param frame frame of the change
 * @param beforeSeconds how far back a dip is looked for
 * @returns true when no dip separates the notes
 */
export function isJoined(grid: PitchGrid, frame: number, beforeSeconds: number): boolean {
  const { levelDb, hopSeconds } = grid;
  const from = Math.max(0, frame - Math.round(beforeSeconds / hopSeconds));
  const to = Math.min(levelDb.length - 1, frame + Math.round(AFTER_SECONDS / hopSeconds));
  const side = Math.round(SIDE_SECONDS / hopSeconds);
  let lowest = Number.POSITIVE_INFINITY;
  for (let f = from; f <= to; f++) lowest = Math.min(lowest, levelDb[f]!);
  const before = most(levelDb, from - side, from);
  const after = most(levelDb, to, to + side);
  return Math.min(before, after) - lowest < DIP_DB;
}

function most(levels: Float32Array, from: number, to: number): number {
  let value = -200;
  for (let f = Math.max(0, from); f <= Math.min(levels.length - 1, to); f++) value = Math.max(value, levels[f]!);
  return value;
}
