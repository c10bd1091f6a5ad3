import { halfBandWeights } from './half-band.js';

/** Taps of the low-pass filter on each side of its centre, for each step of decimation. */
const SIDE_TAPS_A_STEP = 6;
/** Seven weights on each side let 0.4 of the new rate through and hold back 55 dB from 0.62 of it on. */
const HALF_BAND_WEIGHTS = 7;
const HALF_BAND_BETA = 5;
/** Samples of the result made at a time where it is made in two steps. */
const STRETCH_SAMPLES = 2048;

/**
 * Low-pass filters and keeps one sample of `factor`. No delay: output sample k stands at input sample `k * factor`.
 *
 * @param samples input, any rate
 * @param factor whole number, 1 returns the input itself
 * @returns the slower signal
 *
 * Source: Oppenheim & Schafer, Discrete-Time Signal Processing: windowed-sinc design, Hamming window, cut-off at 0.45 of
 * the new rate; even factors are halved first, by a half-band filter (multistage decimation).
 */
export function decimate(samples: Float32Array, factor: number): Float32Array {
  if (factor === 1) return samples;
  if (factor % 4 === 0) return decimate(halveTwice(samples), factor / 4);
  if (factor % 2 === 0) return decimate(halve(samples), factor / 2);
  return filterAndKeep(samples, factor);
}

function halve(samples: Float32Array): Float32Array {
  const out = new Float32Array(Math.ceil(samples.length / 2));
  halveInto(samples, 0, out, 0, out.length);
  return out;
}

/** Halves twice, a stretch at a time: the signal between, half as large as the recording, is never kept whole. */
function halveTwice(samples: Float32Array): Float32Array {
  const side = 2 * HALF_BAND_WEIGHTS - 1;
  const between = Math.ceil(samples.length / 2);
  const out = new Float32Array(Math.ceil(between / 2));
  const stretch = new Float32Array(2 * STRETCH_SAMPLES + 2 * side);
  for (let k = 0; k < out.length; k += STRETCH_SAMPLES) {
    const start = 2 * k - side;
    const from = Math.max(0, start);
    const to = Math.min(between, start + stretch.length);
    // beyond both ends of the recording there is silence
    stretch.fill(0);
    halveInto(samples, 2 * from, stretch, from - start, to - from);
    halveInto(stretch, side, out, k, Math.min(STRETCH_SAMPLES, out.length - k));
  }
  return out;
}

/** Fills `count` entries of `out` from every other sample; written out, because this reads the recording at its full rate. */
function halveInto(x: Float32Array, first: number, out: Float32Array, at: number, count: number): void {
  const weights = halfBandWeights(HALF_BAND_WEIGHTS, HALF_BAND_BETA).map((weight) => weight / 2);
  const [a, b, c, d, e, f, g] = weights as unknown as [number, number, number, number, number, number, number];
  const side = 2 * HALF_BAND_WEIGHTS - 1;
  for (let k = at, i = first; k < at + count; k++, i += 2) {
    if (i < side || i + side >= x.length) {
      out[k] = 0.5 * x[i]! + atEdge(x, weights, i);
      continue;
    }
    out[k] =
      0.5 * x[i]! +
      a * (x[i - 1]! + x[i + 1]!) +
      b * (x[i - 3]! + x[i + 3]!) +
      c * (x[i - 5]! + x[i + 5]!) +
      d * (x[i - 7]! + x[i + 7]!) +
      e * (x[i - 9]! + x[i + 9]!) +
      f * (x[i - 11]! + x[i + 11]!) +
      g * (x[i - 13]! + x[i + 13]!);
  }
}

function atEdge(samples: Float32Array, weights: Float64Array, centre: number): number {
  return weights.reduce((sum, weight, j) => {
    const away = 2 * j + 1;
    return sum + weight * ((samples[centre - away] ?? 0) + (samples[centre + away] ?? 0));
  }, 0);
}

function filterAndKeep(samples: Float32Array, factor: number): Float32Array {
  const side = SIDE_TAPS_A_STEP * factor;
  const taps = lowPassTaps(side, 0.45 / factor);
  const out = new Float32Array(Math.ceil(samples.length / factor));
  const inner = samples.length - side - 1;
  for (let k = 0; k < out.length; k++) {
    const centre = k * factor;
    if (centre < side || centre > inner) {
      out[k] = edgeSample(samples, taps, side, centre);
      continue;
    }
    // two sums side by side: neither addition waits for the other
    let odd = 0;
    let even = taps[0]! * samples[centre]!;
    for (let j = 1; j < side; j += 2) {
      odd += taps[j]! * (samples[centre - j]! + samples[centre + j]!);
      even += taps[j + 1]! * (samples[centre - j - 1]! + samples[centre + j + 1]!);
    }
    out[k] = odd + even;
  }
  return out;
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

function edgeSample(samples: Float32Array, taps: Float64Array, side: number, centre: number): number {
  let sum = 0;
  for (let j = -side; j <= side; j++) sum += taps[Math.abs(j)]! * (samples[centre + j] ?? 0);
  return sum;
}
