import type { PitchGrid } from './grid/pitch-grid.js';

const SIDE_SECONDS = 0.12;
/** A level that dips by more than this between two notes is a break, however short. */
const DIP_DB = 5;

/**
 * Where sound stops, however shortly, between one note and the next.
 *
 * @param grid levels a pitch frame
 * @param from first and last frame among which the lowest level is looked for
 * @param to last of them
 * @param endFrame frame at which the second note is over; nothing from there on counts as its sound
 * @returns the frame of the lowest level; null when no dip separates the notes
 */
export function findTrough(
  { levelDb, hopSeconds }: PitchGrid,
  from: number,
  to: number,
  endFrame: number,
): number | null {
  const first = Math.max(0, from);
  const last = Math.min(levelDb.length - 1, to);
  if (last < first) return null;
  const side = Math.round(SIDE_SECONDS / hopSeconds);
  let lowest = first;
  for (let f = first + 1; f <= last; f++) if (levelDb[f]! <= levelDb[lowest]!) lowest = f;
  const before = most(levelDb, first - side, lowest);
  const after = most(levelDb, lowest, Math.min(lowest + side, Math.max(last, endFrame)));
  return Math.min(before, after) - levelDb[lowest]! < DIP_DB ? null : lowest;
}

function most(levels: Float32Array, from: number, to: number): number {
  let value = -200;
  for (let f = Math.max(0, from); f <= Math.min(levels.length - 1, to); f++) value = Math.max(value, levels[f]!);
  return value;
}
