import { quantile } from '../base/index.js';
import type { Samples } from '../decode/index.js';
import { keptFor, openLoops } from '../simd/index.js';

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
  const meter = levelMeter(hop);
  for (let first = 0; first < power.length; first += FRAMES_AT_ONCE) {
    const frames = Math.min(FRAMES_AT_ONCE, power.length - first);
    const found = meter.measure(samples.subarray(first * hop, (first + frames) * hop), frames);
    power.set(found.power.subarray(0, frames), first);
    peak.set(found.peak.subarray(0, frames), first);
  }
  const rest = samples.subarray(power.length * hop, samples.length);
  peak[power.length] = rest.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  return { hopSeconds: hop / sampleRateHz, power, peak, noiseFloorDb: floorOf(power, hop / sampleRateHz) };
}

/** Measures frames of one length. */
interface LevelMeter {
  /** Mean square and peak of each frame of a block; valid until the next call. */
  measure(block: Float32Array, frames: number): { readonly power: Float32Array; readonly peak: Float32Array };
}

const levelMeter = keptFor(createMeter);

function createMeter(hop: number): LevelMeter {
  const { loops, memory } = openLoops({ block: FRAMES_AT_ONCE * hop, power: FRAMES_AT_ONCE, peak: FRAMES_AT_ONCE });
  const { block: inside, power, peak } = memory;
  return {
    measure(block, frames) {
      inside.set(block);
      loops.frameLevels(inside.byteOffset, frames, hop, power.byteOffset, peak.byteOffset);
      return { power, peak };
    },
  };
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
