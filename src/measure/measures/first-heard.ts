import type { Features } from '../../features/index.js';

/** From so far below its level on a note is heard. */
const HEARD_DB = 30;
/** What belongs to a note is nowhere as soft as what was there for so long before it, and by so much. */
const BEFORE_IT_SECONDS = 0.08;
const ABOVE_BEFORE_DB = 3;
/** Over so long the level of noise is looked at, which strays by itself in shorter frames. */
const NOISE_SECONDS = 0.03;
/** Frames in which a beginning is placed, and how far it must be above what was before. */
const FRAME_SECONDS = 0.01;
const ABOVE_VALLEY_DB = 6;
/** So far below its level a note has come to it. */
const REACHED_DB = 6;
/** The onset that was found may lie so long after the note is at its level. */
const EARLY_SECONDS = 0.06;

/** When a note is first heard, and when it is near its level; seconds from the first sample. */
export interface FirstHeard {
  readonly heard: number;
  readonly atLevel: number;
  /** how far the sound before has fallen below its level, dB */
  readonly fallenDb: number;
}

/**
 * Where the sound of a note begins, its air included: the earliest moment from which on all of it is louder than what was there
 * before. The noise of a room, however loud, is none of it, nor is a breath that ends before the note.
 *
 * @param features what was heard
 * @param before where to begin looking, seconds
 * @param onset of the note, seconds
 * @param until where to end looking for its level, seconds
 * @param steadyDb level of its held part, dBFS
 * @param valleyDb the sound before must have fallen so far below that
 * @returns when it is heard and when it is near its level; null where the sound before has not died away, or it comes nowhere near
 */
export function firstHeard(
  { power, levelHopSeconds: hop }: Features,
  before: number,
  onset: number,
  until: number,
  steadyDb: number,
  valleyDb: number,
): FirstHeard | null {
  const frames = (seconds: number): number => Math.round(seconds / hop);
  const from = Math.max(0, frames(before - BEFORE_IT_SECONDS));
  const levels = levelsOver(power, from, frames(until), frames(FRAME_SECONDS));
  const first = Math.max(0, frames(before - FRAME_SECONDS) - from);
  const found = frames(onset) - from;
  const around = levels.slice(0, found + frames(EARLY_SECONDS));
  const lowest = Math.min(...around.slice(first));
  if (lowest > steadyDb - valleyDb) return null;
  const early = Math.max(around.lastIndexOf(lowest), found - frames(EARLY_SECONDS));
  const reached = levels.findIndex((db, i) => i >= early && db >= steadyDb - REACHED_DB);
  if (reached < 0) return null;
  const slow = levelsOver(power, from, from + reached + 1, frames(NOISE_SECONDS));
  const start = earliest(slow, first, reached, steadyDb, frames(BEFORE_IT_SECONDS));
  const least = Math.max(steadyDb - HEARD_DB, start.beforeDb + ABOVE_VALLEY_DB);
  const heard = levels.findIndex((db, i) => i >= start.at && (db >= least || i === reached));
  return { heard: (from + heard) * hop, atLevel: (from + reached) * hop, fallenDb: steadyDb - lowest };
}

/** The earliest frame from which on everything is louder than the frames before it, and their mean level. */
function earliest(
  levels: Float64Array,
  first: number,
  reached: number,
  steadyDb: number,
  frames: number,
): { readonly at: number; readonly beforeDb: number } {
  const sums = new Float64Array(levels.length + 1);
  for (let i = 0; i < levels.length; i++) sums[i + 1] = sums[i]! + levels[i]!;
  const meanBefore = (i: number): number => (sums[i]! - sums[Math.max(0, i - frames)]!) / Math.min(i, frames);
  let softest = levels[reached]!;
  let at = reached;
  for (let i = reached; i > first; i--) {
    softest = Math.min(softest, levels[i]!);
    if (softest < steadyDb - HEARD_DB) break;
    if (softest >= meanBefore(i) + ABOVE_BEFORE_DB) at = i;
  }
  return { at, beforeDb: at > 0 ? meanBefore(at) : levels[0]! };
}

/** RMS levels of frames of so many level frames, dB; one a level frame, at which it begins. */
function levelsOver(power: Float32Array, from: number, to: number, length: number): Float64Array {
  const levels = new Float64Array(Math.max(1, to - from));
  let sum = 0;
  for (let k = from; k < from + length; k++) sum += power[k] ?? 0;
  for (let i = 0; i < levels.length; i++) {
    levels[i] = 10 * Math.log10(Math.max(0, sum) / length + 1e-12);
    sum += (power[from + i + length] ?? 0) - (power[from + i] ?? 0);
  }
  return levels;
}
