import { quantile } from '../base/index.js';
import type { Samples } from '../decode/index.js';

/** Length of one level frame in seconds, before rounding to whole samples. */
const LEVEL_HOP_SECONDS = 0.002;
/** Frames whose samples are asked for at a time. */
const FRAMES_AT_ONCE = 256;
/** Stretch over which power is averaged before the quietest part of the take is looked for. */
const FLOOR_SECONDS = 0.05;
const FLOOR_SHARE = 0.03;
/** What a 16 bit file can hold at least: one step, -96 dBFS. */
const LOWEST_DB = -100;

/** Power of the recording in short frames. */
export interface LevelFrames {
  readonly hopSeconds: number;
  /** mean square in each frame; frames follow each other without overlap */
  readonly power: Float32Array;
  /** largest size of a sample in each frame; one entry more for the samples after the last whole frame */
  readonly peak: Float32Array;
  /** level of the quietest stretches, dBFS */
  readonly noiseFloorDb: number;
}

/**
 * @param samples mono, full scale ±1
 * @param sampleRateHz rate
 * @returns mean square and peak a frame of about 2 ms, unweighted, and the floor
 *
 * Source: RMS by definition; unweighted because frequency weighting makes registers look like dynamics.
 */
export function measureLevels(samples: Samples, sampleRateHz: number): LevelFrames {
  const hop = Math.max(1, Math.round(LEVEL_HOP_SECONDS * sampleRateHz));
  const power = new Float32Array(Math.floor(samples.length / hop));
  const peak = new Float32Array(power.length + 1);
  for (let first = 0; first < peak.length; first += FRAMES_AT_ONCE) {
    const block = samples.subarray(first * hop, Math.min(samples.length, (first + FRAMES_AT_ONCE) * hop));
    const end = Math.min(peak.length, first + FRAMES_AT_ONCE);
    for (let f = first; f < end; f++) measureFrame(block, (f - first) * hop, hop, f, power, peak);
  }
  return { hopSeconds: hop / sampleRateHz, power, peak, noiseFloorDb: floorOf(power, hop / sampleRateHz) };
}

/** One frame's power, if it is whole, and its peak. */
function measureFrame(
  block: Float32Array,
  from: number,
  hop: number,
  f: number,
  power: Float32Array,
  peak: Float32Array,
): void {
  let sum = 0;
  let most = 0;
  for (let i = from, end = Math.min(block.length, from + hop); i < end; i++) {
    const square = block[i]! * block[i]!;
    sum += square;
    if (square > most) most = square;
  }
  if (f < power.length) power[f] = sum / hop;
  peak[f] = Math.sqrt(most);
}

function floorOf(power: Float32Array, hopSeconds: number): number {
  const span = Math.max(1, Math.round(FLOOR_SECONDS / hopSeconds));
  const stretches: number[] = [];
  for (let from = 0; from + span <= power.length; from += span) {
    let sum = 0;
    for (let f = from; f < from + span; f++) sum += power[f]!;
    stretches.push(sum / span);
  }
  const quiet = quantile(stretches, FLOOR_SHARE);
  return quiet > 0 ? Math.max(LOWEST_DB, 10 * Math.log10(quiet)) : LOWEST_DB;
}
