import { median, quantile } from '../base/index.js';
import type { LevelFrames } from './level-frames.js';
import { CANDIDATES } from './types.js';

/** The quietest frames looked at, share of all, and how periodic they must be to be music and not the room. */
const QUIET_SHARE = 0.05;
const CLEAR = 0.75;
/** The loud end of a take, share of its frames below it. */
const LOUD_SHARE = 0.9;
/** So far below the loud end lies at least what is left of the room where nobody ever stops playing. */
const ROOM_BELOW_LOUD_DB = 40;

/**
 * The floor of a take. In a fragment that nowhere falls silent the quietest stretches are soft notes: what is quietest is
 * periodic there, and the room lies somewhere below, no higher than so far under the loud end.
 *
 * @param levels power of the take and the level of its quietest stretches
 * @param candidateClarity periodicity of the candidates of each pitch frame, 0 to 1, the best first
 * @param pitchHopSeconds seconds between pitch frames
 * @returns level below which there is only room and recorder, dBFS
 *
 * Noise has no period (Boersma 1993).
 */
export function musicAsFloor(levels: LevelFrames, candidateClarity: Float32Array, pitchHopSeconds: number): number {
  const { power, hopSeconds, noiseFloorDb } = levels;
  const reach = Math.max(1, Math.round(pitchHopSeconds / hopSeconds));
  const frames = candidateClarity.length / CANDIDATES;
  const level = new Float64Array(frames);
  for (let f = 0; f < frames; f++)
    level[f] = powerAround(power, Math.round((f * pitchHopSeconds) / hopSeconds), 4 * reach);
  const quiet = quantile(level, QUIET_SHARE);
  const clarity: number[] = [];
  for (let f = 0; f < frames; f++) if (level[f]! <= quiet) clarity.push(candidateClarity[f * CANDIDATES]!);
  if (clarity.length === 0 || median(clarity) < CLEAR) return noiseFloorDb;
  return Math.min(noiseFloorDb, 10 * Math.log10(quantile(level, LOUD_SHARE) + 1e-10) - ROOM_BELOW_LOUD_DB);
}

function powerAround(power: Float32Array, centre: number, reach: number): number {
  let sum = 0;
  let count = 0;
  for (let k = Math.max(0, centre - reach); k < Math.min(power.length, centre + reach); k++) {
    sum += power[k]!;
    count++;
  }
  return count === 0 ? 0 : sum / count;
}
