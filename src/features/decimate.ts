import { createScratch, type Samples } from '../decode/index.js';
import { halfBandWeights } from './half-band.js';

/** Taps of the low-pass filter on each side of its centre, for each step of decimation. */
const SIDE_TAPS_A_STEP = 6;
/** Seven weights on each side let 0.4 of the new rate through and hold back 55 dB from 0.62 of it on. */
const HALF_BAND_WEIGHTS = 7;
const HALF_BAND_BETA = 5;
/** Samples made at a time, so that what they are made of stays in the processor's cache. */
const BLOCK = 4096;

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

/** Every other sample. */
function halved(samples: Samples): Samples {
  const weights = halfBandWeights(HALF_BAND_WEIGHTS, HALF_BAND_BETA).map((weight) => weight / 2);
  const side = 2 * HALF_BAND_WEIGHTS - 1;
  const length = Math.ceil(samples.length / 2);
  const memory = createScratch();
  return {
    length,
    subarray(from = 0, to = length) {
      // some more than are asked for, so that four fit in at the end
      const fours = 4 * Math.ceil((to - from) / 4);
      const out = memory(fours);
      halveInto(out, padded(samples, 2 * from - side, 2 * (from + fours) - 1 + side), side, weights);
      return out.subarray(0, to - from);
    },
  };
}

/**
 * Written out, because this reads the whole recording at its full rate. Four are made at a time: most of what one is made of
 * serves the next ones too. A function by itself, so that the engine compiles it once and not for every recording.
 */
function halveInto(out: Float32Array, x: Float32Array, side: number, weights: Float64Array): void {
  const [a, b, c, d, e, f, g] = weights as unknown as [number, number, number, number, number, number, number];
  for (let k = 0, i = side; k < out.length; k += 4, i += 8) {
    const p0 = x[i - 13]!;
    const p1 = x[i - 11]!;
    const p2 = x[i - 9]!;
    const p3 = x[i - 7]!;
    const p4 = x[i - 5]!;
    const p5 = x[i - 3]!;
    const p6 = x[i - 1]!;
    const p7 = x[i + 1]!;
    const p8 = x[i + 3]!;
    const p9 = x[i + 5]!;
    const p10 = x[i + 7]!;
    const p11 = x[i + 9]!;
    const p12 = x[i + 11]!;
    const p13 = x[i + 13]!;
    const p14 = x[i + 15]!;
    const p15 = x[i + 17]!;
    const p16 = x[i + 19]!;
    out[k] =
      0.5 * x[i]! +
      a * (p6 + p7) +
      b * (p5 + p8) +
      c * (p4 + p9) +
      d * (p3 + p10) +
      e * (p2 + p11) +
      f * (p1 + p12) +
      g * (p0 + p13);
    out[k + 1] =
      0.5 * x[i + 2]! +
      a * (p7 + p8) +
      b * (p6 + p9) +
      c * (p5 + p10) +
      d * (p4 + p11) +
      e * (p3 + p12) +
      f * (p2 + p13) +
      g * (p1 + p14);
    out[k + 2] =
      0.5 * x[i + 4]! +
      a * (p8 + p9) +
      b * (p7 + p10) +
      c * (p6 + p11) +
      d * (p5 + p12) +
      e * (p4 + p13) +
      f * (p3 + p14) +
      g * (p2 + p15);
    out[k + 3] =
      0.5 * x[i + 6]! +
      a * (p9 + p10) +
      b * (p8 + p11) +
      c * (p7 + p12) +
      d * (p6 + p13) +
      e * (p5 + p14) +
      f * (p4 + p15) +
      g * (p3 + p16);
  }
}

/** One sample of `factor`, which is odd. */
function filtered(samples: Samples, factor: number): Samples {
  const side = SIDE_TAPS_A_STEP * factor;
  const taps = lowPassTaps(side, 0.45 / factor);
  const length = Math.ceil(samples.length / factor);
  const memory = createScratch();
  return {
    length,
    subarray(from = 0, to = length) {
      const x = padded(samples, from * factor - side, (to - 1) * factor + side + 1);
      const out = memory(to - from);
      filterInto(out, x, factor, taps);
      return out;
    },
  };
}

function filterInto(out: Float32Array, x: Float32Array, factor: number, taps: Float64Array): void {
  const side = taps.length - 1;
  for (let k = 0, centre = side; k < out.length; k++, centre += factor) {
    // two sums side by side: neither addition waits for the other
    let odd = 0;
    let even = taps[0]! * x[centre]!;
    for (let j = 1; j < side; j += 2) {
      odd += taps[j]! * (x[centre - j]! + x[centre + j]!);
      even += taps[j + 1]! * (x[centre - j - 1]! + x[centre + j + 1]!);
    }
    out[k] = odd + even;
  }
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
