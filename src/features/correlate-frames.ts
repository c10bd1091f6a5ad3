import FFT from 'fft.js';
import type { FramePlan } from './frame-plan.js';
import { halfBandWeights } from './half-band.js';

/** Frames worked on at a time: their power spectra fill one complex transform completely. */
export const FRAMES_AT_ONCE = 4;
/** Lags between the samples: a bright tone's peak is too narrow to be read from whole samples. */
export const LAGS_A_SAMPLE = 2;
/** Whole lags on each side from which the value halfway between two lags is read, and the shape of their window. */
const SIDE_LAGS = 8;
const SIDE_LAGS_BETA = 7;
/** Below this sum of the squared, tapered samples there is digital silence, and no period. */
const LEAST_ENERGY = 2e-10;

/** Power spectra and autocorrelations of a few frames in a row; the next call overwrites them. */
export interface CorrelatedFrames {
  /** power spectrum of each frame, by bin, from firstBin to half the transform */
  readonly power: readonly Float64Array[];
  /**
   * autocorrelation of each frame divided by that of the window, 1 at lag 0; entry LAGS_A_SAMPLE * lag, filled from just
   * below the shortest lag to the longest; digital silence has none
   */
  readonly curve: readonly (Float64Array | null)[];
}

/** Correlates frames with memory of its own. */
export interface FrameCorrelator {
  /** lowest bin of the transform that is looked at */
  readonly firstBin: number;
  /**
   * @param samples mono at the plan's rate, silent beyond both ends
   * @param frame the first of FRAMES_AT_ONCE frames; frame f is centred at sample f * hopSamples
   * @returns what was found, valid until the next call
   */
  correlate(samples: Float32Array, frame: number): CorrelatedFrames;
}

/**
 * Tapered autocorrelation by FFT. On the way out two real frames share one complex transform; on the way back, where
 * spectra of power are even, four do.
 *
 * @param plan from planFrames
 * @returns a correlator for recordings of that plan
 *
 * Source: Boersma 1993 (autocorrelation divided by that of the window); Wiener–Khinchin theorem.
 */
export function createFrameCorrelator(plan: FramePlan): FrameCorrelator {
  const { fftSize, windowSamples, hopSamples, longestLag, shortestLag } = plan;
  const fft = new FFT(fftSize);
  const window = hannWindow(windowSamples);
  const gain = windowGain(window, LAGS_A_SAMPLE * longestLag + 2);
  const weights = halfBandWeights(SIDE_LAGS, SIDE_LAGS_BETA);
  // what turns the distance between lag and −lag into an autocorrelation, see unpackLags
  const oddScale = Float64Array.from(
    { length: longestLag + SIDE_LAGS + 1 },
    (_, lag) => 0.25 / Math.sin((2 * Math.PI * lag) / fftSize),
  );
  const input = new Float64Array(2 * fftSize);
  const packed = new Float64Array(2 * fftSize);
  const output = new Float64Array(2 * fftSize);
  const firstBin = Math.max(1, Math.floor((0.7 * fftSize) / longestLag));
  const memory = (length: number) => Array.from({ length: FRAMES_AT_ONCE }, () => new Float64Array(length));
  const power = memory(fftSize / 2 + 2);
  const lags = memory(SIDE_LAGS + longestLag + SIDE_LAGS + 1);
  const curves = memory(LAGS_A_SAMPLE * longestLag + 2);
  return {
    firstBin,
    correlate(samples, frame) {
      for (let pair = 0; pair < FRAMES_AT_ONCE; pair += 2) {
        windowPair(samples, (frame + pair) * hopSamples - windowSamples / 2, hopSamples, window, input);
        fft.transform(output, input);
        splitPowers(output, fftSize, firstBin, power[pair]!, power[pair + 1]!);
      }
      packPowers(power, fftSize, packed);
      fft.transform(output, packed);
      unpackLags(output, fftSize, oddScale, lags);
      const curve = curves.map((out, k) => {
        const zero = sumOfEven(power[k]!, fftSize / 2);
        if (!(zero / fftSize > LEAST_ENERGY)) return null;
        mirror(lags[k]!, zero);
        fillCurve(lags[k]!, weights, shortestLag - 1, zero, gain, out);
        return out;
      });
      return { power, curve };
    },
  };
}

function hannWindow(length: number): Float64Array {
  return Float64Array.from({ length }, (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / length));
}

/** 1 / autocorrelation of the window, LAGS_A_SAMPLE entries a sample, with value 1 at lag 0. */
function windowGain(window: Float64Array, length: number): Float64Array {
  const gain = new Float64Array(length);
  for (let lag = 0; lag < length; lag++) {
    const shift = Math.floor(lag / LAGS_A_SAMPLE);
    const between = lag / LAGS_A_SAMPLE - shift;
    let sum = 0;
    for (let i = 0; i + shift + 1 < window.length; i++) {
      sum += window[i]! * (window[i + shift]! * (1 - between) + window[i + shift + 1]! * between);
    }
    gain[lag] = sum;
  }
  return gain.map((g) => gain[0]! / g);
}

/** Two tapered frames, the first in the real and the second in the imaginary parts. */
function windowPair(
  samples: Float32Array,
  first: number,
  hopSamples: number,
  window: Float64Array,
  input: Float64Array,
): void {
  const inside = first >= 0 && first + hopSamples + window.length <= samples.length;
  const from = inside ? samples : padded(samples, first, hopSamples + window.length);
  const start = inside ? first : 0;
  for (let i = 0; i < window.length; i++) {
    const weight = window[i]!;
    input[2 * i] = weight * from[start + i]!;
    input[2 * i + 1] = weight * from[start + hopSamples + i]!;
  }
}

/** A stretch that reaches beyond the recording, silent there. */
function padded(samples: Float32Array, first: number, length: number): Float32Array {
  return Float32Array.from({ length }, (_, i) => samples[first + i] ?? 0);
}

/** Power spectra of the two real signals in a complex transform. */
function splitPowers(
  spectrum: Float64Array,
  fftSize: number,
  firstBin: number,
  a: Float64Array,
  b: Float64Array,
): void {
  for (let k = firstBin; k <= fftSize / 2; k++) {
    const m = fftSize - k;
    const xr = spectrum[2 * k]!;
    const xi = spectrum[2 * k + 1]!;
    const yr = spectrum[2 * m]!;
    const yi = spectrum[2 * m + 1]!;
    a[k] = ((xr + yr) * (xr + yr) + (xi - yi) * (xi - yi)) / 4;
    b[k] = ((xi + yi) * (xi + yi) + (xr - yr) * (xr - yr)) / 4;
  }
}

/**
 * Four even spectra in one complex one: the first and second as they are, the third and fourth as the differences of
 * neighbouring bins, which are odd. Their transforms are even and odd too, and so can be told apart.
 */
function packPowers(power: readonly Float64Array[], fftSize: number, packed: Float64Array): void {
  const [a, b, c, d] = power as [Float64Array, Float64Array, Float64Array, Float64Array];
  const half = fftSize / 2;
  packed[fftSize] = a[half]!;
  packed[fftSize + 1] = b[half]!;
  for (let k = 1; k < half; k++) {
    const m = fftSize - k;
    const oddC = c[k - 1]! - c[k + 1]!;
    const oddD = d[k - 1]! - d[k + 1]!;
    packed[2 * k] = a[k]! + oddC;
    packed[2 * k + 1] = b[k]! + oddD;
    packed[2 * m] = a[k]! - oddC;
    packed[2 * m + 1] = b[k]! - oddD;
  }
}

/**
 * Autocorrelations from the transform of packed spectra, entry `SIDE_LAGS + lag`, not scaled. With s = 2 sin(2π lag / size)
 * the transform at `lag` holds a + s d in its real and b − s c in its imaginary part; at −lag, s changes its sign.
 */
function unpackLags(
  output: Float64Array,
  fftSize: number,
  oddScale: Float64Array,
  lags: readonly Float64Array[],
): void {
  const [a, b, c, d] = lags as [Float64Array, Float64Array, Float64Array, Float64Array];
  for (let lag = 1; lag < oddScale.length; lag++) {
    const m = fftSize - lag;
    const re = output[2 * lag]!;
    const im = output[2 * lag + 1]!;
    const mirrorRe = output[2 * m]!;
    const mirrorIm = output[2 * m + 1]!;
    a[SIDE_LAGS + lag] = (re + mirrorRe) / 2;
    b[SIDE_LAGS + lag] = (im + mirrorIm) / 2;
    c[SIDE_LAGS + lag] = (mirrorIm - im) * oddScale[lag]!;
    d[SIDE_LAGS + lag] = (re - mirrorRe) * oddScale[lag]!;
  }
}

/** Completes an autocorrelation by its value at lag 0 and a few negative lags. */
function mirror(lags: Float64Array, zero: number): void {
  lags[SIDE_LAGS] = zero;
  for (let lag = 1; lag <= SIDE_LAGS; lag++) lags[SIDE_LAGS - lag] = lags[SIDE_LAGS + lag]!;
}

/**
 * Whole lags and those halfway between, from `firstLag` on, divided by the window's own autocorrelation. Where the mean of
 * two lags is not positive there can be no peak between them, and the mean will do.
 */
function fillCurve(
  lags: Float64Array,
  weights: Float64Array,
  firstLag: number,
  zero: number,
  gain: Float64Array,
  curve: Float64Array,
): void {
  for (let t = LAGS_A_SAMPLE * firstLag; t + 1 < curve.length; t += LAGS_A_SAMPLE) {
    const at = SIDE_LAGS + t / LAGS_A_SAMPLE;
    const neighbours = lags[at]! + lags[at + 1]!;
    let between = neighbours / 2;
    if (neighbours > 0) {
      between = 0;
      for (let j = 0; j < SIDE_LAGS; j++) between += weights[j]! * (lags[at - j]! + lags[at + 1 + j]!);
    }
    curve[t] = (lags[at]! / zero) * gain[t]!;
    curve[t + 1] = (between / zero) * gain[t + 1]!;
  }
}

/** Sum over all bins of an even spectrum of which one half is given: its transform at lag 0. */
function sumOfEven(power: Float64Array, half: number): number {
  let sum = 0;
  for (let k = 1; k < half; k++) sum += power[k]!;
  return 2 * sum + power[half]!;
}
