import { median } from '../base/index.js';
import type { Features } from '../features/index.js';

/** Power is averaged over this long before it is compared. */
const SMOOTHING_SECONDS = 0.01;
/** The note has ended when it has fallen this far below its own last held level, for good. */
const FALL_DB = 4;
/** First look: the last moment at most this far below the loudest. */
const FIRST_LOOK_DB = 14;
/** The slope of the release is read between these two. */
const FURTHER_FALL_DB = 10;
const MOST_RELEASE_FRAMES = 20;
const HELD_SECONDS = 0.08;
const RELEASE_SECONDS = 0.012;

/**
 * When the sound of a note ends, between its onset and the next onset.
 *
 * @param features what was heard
 * @param onsetSeconds onset of the note
 * @param nextSeconds onset of the next, or the end of the playing
 * @returns offset in seconds; nextSeconds when the sound lasts until then
 *
 * Source: definition; the level just before the release is the reference, so that a diminuendo does not shorten a note.
 */
export function refineOffset(features: Features, onsetSeconds: number, nextSeconds: number): number {
  const { power, levelHopSeconds: hop } = features;
  const first = Math.max(0, Math.round(onsetSeconds / hop));
  const last = Math.min(power.length - 1, Math.round(nextSeconds / hop) - 1);
  if (last - first < 4) return nextSeconds;
  const levels = smoothedDb(power, first, last, Math.max(1, Math.round(SMOOTHING_SECONDS / hop)));
  const loudest = levels.reduce((most, v) => Math.max(most, v), -200);
  let end = levels.length - 1;
  while (end > 0 && levels[end]! < loudest - FIRST_LOOK_DB) end--;
  const to = Math.max(1, end - Math.round(RELEASE_SECONDS / hop));
  const held = median(levels.subarray(Math.max(0, to - Math.round(HELD_SECONDS / hop)), to + 1));
  while (end > 0 && levels[end]! < held - FALL_DB) end--;
  if (end >= levels.length - 2) return nextSeconds;
  return (first + end + 1) * hop - fallingFor(levels, end, held) * hop;
}

/** Frames that the release had been under way when the level had fallen by FALL_DB, if it falls evenly. */
function fallingFor(levels: Float64Array, end: number, held: number): number {
  let low = end;
  while (low < levels.length - 1 && levels[low]! > held - FURTHER_FALL_DB) low++;
  const fall = levels[end]! - levels[low]!;
  if (fall < 2) return 0;
  return Math.min(MOST_RELEASE_FRAMES, ((held - levels[end]!) * (low - end)) / fall);
}

function smoothedDb(power: Float32Array, first: number, last: number, span: number): Float64Array {
  const levels = new Float64Array(last - first + 1);
  let sum = 0;
  for (let k = first; k < first + span && k <= last; k++) sum += power[k]!;
  for (let k = first; k <= last; k++) {
    levels[k - first] = 10 * Math.log10(sum / span + 1e-12);
    sum += (power[k + span] ?? 0) - power[k]!;
  }
  return levels;
}
