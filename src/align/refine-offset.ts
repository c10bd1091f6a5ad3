import type { Features } from '../features/index.js';

/** Power is averaged over this long before it is compared. */
const SMOOTHING_SECONDS = 0.01;
/** A note has ended where all that follows is so much softer than what stood just before. */
const DROP_DB = 5;
const BEFORE_SECONDS = 0.04;
const RELEASE_SECONDS = 0.016;
/** The fall is under way when the level is this far below what stood before. */
const FALLING_DB = 2;
/** The end of the time before the next onset may already hold its attack: so far back a valley is looked for. */
const ATTACK_SECONDS = 0.08;
const ATTACK_SHARE = 0.4;
/** The fall from a strong attack to the held tone is no end: so much of the time is left out. */
const ATTACK_PART = 0.25;
const MOST_ATTACK_SECONDS = 0.1;

/**
 * When the sound of a note ends, between its onset and the next onset. A slow fading is no end, nor is a dip after which
 * the sound comes back; a sudden fall down to the room or its noise is.
 *
 * @param features what was heard
 * @param onsetSeconds onset of the note
 * @param nextSeconds onset of the next, or the end of the playing
 * @returns offset in seconds; nextSeconds when the sound lasts until then
 */
export function refineOffset(features: Features, onsetSeconds: number, nextSeconds: number): number {
  const { power, levelHopSeconds: hop } = features;
  const first = Math.max(0, Math.round(onsetSeconds / hop));
  const last = Math.min(power.length - 1, Math.round(nextSeconds / hop) - 1);
  if (last - first < 4) return nextSeconds;
  const levels = smoothedDb(power, first, last, Math.max(1, Math.round(SMOOTHING_SECONDS / hop)));
  const reach = Math.round(Math.min(ATTACK_SECONDS / hop, ATTACK_SHARE * levels.length));
  const end = endOf(levels.subarray(0, valleyBefore(levels, reach) + 1), hop);
  return end === null ? nextSeconds : (first + end) * hop + SMOOTHING_SECONDS / 2;
}

/** First frame after which everything is plainly softer than the frames just before it, null when there is none. */
function endOf(levels: Float64Array, hop: number): number | null {
  const before = Math.max(1, Math.round(BEFORE_SECONDS / hop));
  const release = Math.round(RELEASE_SECONDS / hop);
  const attack = Math.min(MOST_ATTACK_SECONDS / hop, ATTACK_PART * levels.length);
  const loudestFrom = Float64Array.from(levels);
  for (let k = levels.length - 2; k >= 0; k--) loudestFrom[k] = Math.max(levels[k]!, loudestFrom[k + 1]!);
  let sum = 0;
  for (let k = 0; k + release < levels.length; k++) {
    sum += levels[k]! - (k >= before ? levels[k - before]! : 0);
    const held = sum / Math.min(k + 1, before);
    if (k < attack || held - loudestFrom[k + release]! < DROP_DB) continue;
    let end = k;
    while (end > 0 && levels[end]! < held - FALLING_DB) end--;
    return end + 1;
  }
  return null;
}

/** The lowest place near the end, from where the next attack rises. */
function valleyBefore(levels: Float64Array, reach: number): number {
  let lowest = levels.length - 1;
  for (let k = levels.length - 1; k >= Math.max(0, levels.length - 1 - reach); k--) {
    if (levels[k]! < levels[lowest]!) lowest = k;
  }
  return lowest;
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
