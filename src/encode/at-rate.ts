import { besselI0 } from '../base/index.js';
import { createScratch, type Samples } from '../decode/index.js';

/** Zero crossings of the filter to each side of its middle. */
const CROSSINGS = 7;
/** Where the filter has fallen by half, as a share of half the lower rate. */
const EDGE = 0.9;
/** Of the window: what does not pass is 50 dB down. Source: Kaiser's formula, Oppenheim & Schafer, section 7.5.3. */
const KAISER_BETA = 4.55;
/** Samples are summed so many at a time. */
const LANES = 4;
/** Seconds of sound given at a time. */
const BLOCK_SECONDS = 1;

/** Weights of the samples around every place between two of them that is asked for. */
interface Filters {
  /** one filter after the other, each of `taps` weights that add up to 1 */
  readonly bank: Float32Array;
  readonly taps: number;
  readonly phases: number;
  /** how far the place goes on from one new sample to the next, in parts of which `phases` are one old sample */
  readonly step: number;
}

/**
 * Changes the rate of a sound; what lies above half the lower one of the two rates is left out.
 *
 * @param samples mono
 * @param rateHz whole number of samples a second
 * @param newRateHz whole number
 * @returns the sound at the new rate, block by block; sample 0 stays where it was. A block is not to be relied on once the
 * next one is asked for
 *
 * Source: Smith, Digital Audio Resampling (windowed sinc); Kaiser 1974 for the window.
 */
export function* atRate(samples: Samples, rateHz: number, newRateHz: number): Generator<Float32Array> {
  const total = Math.ceil((samples.length * newRateHz) / rateHz);
  const filters = rateHz === newRateHz ? null : filtersFor(rateHz, newRateHz);
  const blockLength = BLOCK_SECONDS * newRateHz;
  const [block, around] = [createScratch(), createScratch()];
  for (let from = 0; from < total; from += blockLength) {
    const length = Math.min(blockLength, total - from);
    if (filters === null) yield samples.subarray(from, from + length);
    else yield filtered(samples, filters, from, block(length), around);
  }
}

function filtered(
  samples: Samples,
  { bank, taps, phases, step }: Filters,
  from: number,
  into: Float32Array,
  scratch: (length: number) => Float32Array,
): Float32Array {
  let phase = (from * step) % phases;
  const first = (from * step - phase) / phases - taps / 2 + 1;
  const around = scratch(Math.ceil((into.length * step) / phases) + taps);
  fill(around, samples, first);
  let at = 0;
  for (let n = 0; n < into.length; n++) {
    const filter = phase * taps;
    let [a, b, c, d] = [0, 0, 0, 0];
    for (let tap = 0; tap < taps; tap += LANES) {
      a += (bank[filter + tap] as number) * (around[at + tap] as number);
      b += (bank[filter + tap + 1] as number) * (around[at + tap + 1] as number);
      c += (bank[filter + tap + 2] as number) * (around[at + tap + 2] as number);
      d += (bank[filter + tap + 3] as number) * (around[at + tap + 3] as number);
    }
    into[n] = a + b + c + d;
    phase += step;
    while (phase >= phases) {
      phase -= phases;
      at++;
    }
  }
  return into;
}

/** Samples from a place on, silence where there are none. */
function fill(into: Float32Array, samples: Samples, from: number): void {
  const [start, end] = [Math.max(0, from), Math.min(samples.length, from + into.length)];
  into.fill(0);
  if (end > start) into.set(samples.subarray(start, end), start - from);
}

function filtersFor(rateHz: number, newRateHz: number): Filters {
  const divisor = commonDivisor(rateHz, newRateHz);
  const [step, phases] = [rateHz / divisor, newRateHz / divisor];
  const slowdown = Math.max(1, rateHz / newRateHz);
  const taps = LANES * Math.ceil((2 * CROSSINGS * slowdown) / LANES);
  const bank = new Float32Array(phases * taps);
  for (let phase = 0; phase < phases; phase++) bank.set(filterAt(phase / phases, taps, EDGE / slowdown), phase * taps);
  return { bank, taps, phases, step };
}

/** Weights around a place that lies a fraction of a sample beyond the middle one. */
function filterAt(fraction: number, taps: number, edge: number): Float64Array {
  const reach = taps / 2;
  const filter = Float64Array.from({ length: taps }, (_, tap) => {
    const away = tap - reach + 1 - fraction;
    const x = Math.PI * edge * away;
    const inside = Math.max(0, 1 - (away / reach) ** 2);
    return ((x === 0 ? 1 : Math.sin(x) / x) * besselI0(KAISER_BETA * Math.sqrt(inside))) / besselI0(KAISER_BETA);
  });
  const sum = filter.reduce((a, b) => a + b, 0);
  return filter.map((weight) => weight / sum);
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}
