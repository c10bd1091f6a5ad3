import { besselI0 } from '../base/index.js';
import { copyStretch, type Samples } from '../decode/index.js';
import { keptFor, type Loops, openLoops } from '../simd/index.js';

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

/** Weights of the samples around every place between two of them that is asked for, and the memory they are used in. */
interface Filters {
  readonly loops: Loops;
  /** one filter after the other, each of `taps` weights that add up to 1 */
  readonly bank: Float32Array;
  /** a block of new samples, and the old ones around it */
  readonly block: Float32Array;
  readonly around: Float32Array;
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
 * next one of any sound is asked for
 *
 * Source: Smith, Digital Audio Resampling (windowed sinc); Kaiser 1974 for the window.
 */
export function* atRate(samples: Samples, rateHz: number, newRateHz: number): Generator<Float32Array> {
  const total = Math.ceil((samples.length * newRateHz) / rateHz);
  const filters = rateHz === newRateHz ? null : filtersFor([rateHz, newRateHz]);
  const blockLength = BLOCK_SECONDS * newRateHz;
  for (let from = 0; from < total; from += blockLength) {
    const length = Math.min(blockLength, total - from);
    yield filters === null ? samples.subarray(from, from + length) : filtered(samples, filters, from, length);
  }
}

function filtered(samples: Samples, filters: Filters, from: number, length: number): Float32Array {
  const { loops, bank, taps, phases, step } = filters;
  const [into, around] = [filters.block.subarray(0, length), filters.around];
  const phase = (from * step) % phases;
  copyStretch(around, samples, (from * step - phase) / phases - taps / 2 + 1);
  loops.filterAt(around.byteOffset, bank.byteOffset, taps, phases, step, phase, into.byteOffset, length);
  return into;
}

const filtersFor = keptFor(createFilters);

function createFilters([rateHz, newRateHz]: readonly [number, number]): Filters {
  const divisor = commonDivisor(rateHz, newRateHz);
  const [step, phases] = [rateHz / divisor, newRateHz / divisor];
  const slowdown = Math.max(1, rateHz / newRateHz);
  const taps = LANES * Math.ceil((2 * CROSSINGS * slowdown) / LANES);
  const block = BLOCK_SECONDS * newRateHz;
  const around = Math.ceil((block * step) / phases) + taps;
  const { loops, memory } = openLoops({ bank: phases * taps, block, around });
  for (let phase = 0; phase < phases; phase++) {
    memory.bank.set(filterAt(phase / phases, taps, EDGE / slowdown), phase * taps);
  }
  return { loops, ...memory, taps, phases, step };
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
