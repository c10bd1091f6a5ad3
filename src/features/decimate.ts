import type { Samples } from '../decode/index.js';
import { openLoops } from '../simd/index.js';
import { halfBandWeights } from './half-band.js';

/** Taps of the low-pass filter on each side of its centre, for each step of decimation. */
const SIDE_TAPS_A_STEP = 6;
/** Seven weights on each side let 0.4 of the new rate through and hold back 55 dB from 0.62 of it on. */
const HALF_BAND_WEIGHTS = 7;
const HALF_BAND_BETA = 5;
/** Samples made at a time, so that what they are made of stays in the processor's cache. */
const BLOCK = 4096;
/** Numbers made at a time. */
const LANES = 4;

/**
 * Low-pass filters and keeps one sample of `factor`. No delay: output sample k stands at input sample `k * factor`.
 *
 * @param samples input, any rate
 * @param factor whole number, 1 changes nothing
 * @returns the slower signal
 *
 * Source: Oppenheim & Schafer, Discrete-Time Signal Processing: windowed-sinc design, Hamming window, cut-off at 0.45 of
 * the new rate; even factors are halved first, by a half-band filter (multistage decimation).
 */
export function decimate(samples: Samples, factor: number): Float32Array {
  const slower = slowed(samples, factor);
  const out = new Float32Array(slower.length);
  for (let from = 0; from < out.length; from += BLOCK) {
    out.set(slower.subarray(from, Math.min(out.length, from + BLOCK)), from);
  }
  return out;
}

function slowed(samples: Samples, factor: number): Samples {
  if (factor === 1) return samples;
  return factor % 2 === 0 ? slowed(halved(samples), factor / 2) : filtered(samples, factor);
}

/** A stretch that may reach beyond the recording, silent there. */
function padded(samples: Samples, from: number, to: number): Float32Array {
  if (from >= 0 && to <= samples.length) return samples.subarray(from, to);
  const out = new Float32Array(to - from);
  out.set(samples.subarray(Math.max(0, from), Math.min(samples.length, to)), Math.max(0, -from));
  return out;
}

/** Fills and gives an array of its own: what comes out of a filter, valid until the next call. */
type Filter = (samples: Float32Array, count: number) => Float32Array;

/** Filters are made for blocks of one length; what was made for the last take serves the next. */
const made = new Map<number, { readonly longest: number; readonly filter: Filter }>();

function filterFor(factor: number, longest: number): Filter {
  const kept = made.get(factor);
  if (kept !== undefined && kept.longest >= longest) return kept.filter;
  const filter = factor === 2 ? halfBand(longest) : lowPass(factor, longest);
  made.set(factor, { longest, filter });
  return filter;
}

/** Every other sample. */
function halved(samples: Samples): Samples {
  const side = 2 * HALF_BAND_WEIGHTS - 1;
  const length = Math.ceil(samples.length / 2);
  return {
    length,
    subarray(from = 0, to = length) {
      const around = padded(samples, 2 * from - side, 2 * to - 1 + side);
      return filterFor(2, to - from)(around, to - from);
    },
  };
}

function halfBand(longest: number): Filter {
  const count = LANES * Math.ceil(longest / LANES);
  const { loops, memory } = openLoops({
    samples: 2 * (count + 4 * HALF_BAND_WEIGHTS),
    weights: HALF_BAND_WEIGHTS,
    odds: count + 4 * HALF_BAND_WEIGHTS,
    made: count,
  });
  memory.weights.set(halfBandWeights(HALF_BAND_WEIGHTS, HALF_BAND_BETA).map((weight) => weight / 2));
  const [from, weights, odds, into] = [memory.samples, memory.weights, memory.odds, memory.made];
  return (samples, wanted) => {
    from.set(samples);
    const fours = LANES * Math.ceil(wanted / LANES);
    loops.halve(from.byteOffset, weights.byteOffset, odds.byteOffset, into.byteOffset, fours);
    return into.subarray(0, wanted);
  };
}

/** One sample of `factor`, which is odd. */
function filtered(samples: Samples, factor: number): Samples {
  const side = SIDE_TAPS_A_STEP * factor;
  const length = Math.ceil(samples.length / factor);
  return {
    length,
    subarray(from = 0, to = length) {
      const around = padded(samples, from * factor - side, (to - 1) * factor + side + 1);
      return filterFor(factor, to - from)(around, to - from);
    },
  };
}

function lowPass(factor: number, longest: number): Filter {
  const side = SIDE_TAPS_A_STEP * factor;
  const half = lowPassTaps(side, 0.45 / factor);
  const taps = LANES * Math.ceil((2 * side + 1) / LANES);
  const { loops, memory } = openLoops({ samples: factor * longest + taps, bank: taps, made: longest });
  half.forEach((tap, j) => {
    memory.bank[side - j] = tap;
    memory.bank[side + j] = tap;
  });
  const [from, bank, into] = [memory.samples, memory.bank, memory.made];
  return (samples, wanted) => {
    from.set(samples);
    loops.filterAt(from.byteOffset, bank.byteOffset, taps, 1, factor, 0, into.byteOffset, wanted);
    return into.subarray(0, wanted);
  };
}

function lowPassTaps(side: number, cutOff: number): Float64Array {
  const taps = new Float64Array(side + 1);
  let total = 0;
  for (let j = 0; j <= side; j++) {
    const sinc = j === 0 ? 2 * cutOff : Math.sin(2 * Math.PI * cutOff * j) / (Math.PI * j);
    taps[j] = sinc * (0.54 + 0.46 * Math.cos((Math.PI * j) / side));
    total += (j === 0 ? 1 : 2) * taps[j]!;
  }
  return taps.map((tap) => tap / total);
}
