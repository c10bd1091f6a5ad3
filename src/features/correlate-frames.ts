import { createTransform } from './fourier.js';
import type { FramePlan } from './frame-plan.js';

/** Frames worked on at a time: their power spectra fill one complex transform completely. */
export const FRAMES_AT_ONCE = 4;
/** Lags known on each side of those looked at, for reading values between two lags. */
export const SIDE_LAGS = 8;
/** Below this sum of the squared, tapered samples there is digital silence, and no period. */
const LEAST_ENERGY = 2e-10;

/** Power spectra and autocorrelations of a few frames in a row; the next call overwrites them. */
export interface CorrelatedFrames {
  /** power spectrum of each frame, by bin, from firstBin to half the transform */
  readonly power: readonly Float64Array[];
  /**
   * autocorrelation of each tapered frame in a scale of its own, entry `SIDE_LAGS + lag`, from −SIDE_LAGS to SIDE_LAGS
   * beyond the longest lag; digital silence has none
   */
  readonly lags: readonly (Float64Array | null)[];
}

/** Correlates frames with memory of its own. */
export interface FrameCorrelator {
  /** lowest bin of the transform that is looked at */
  readonly firstBin: number;
  /** the taper of a frame, as many numbers as the plan's window has samples */
  readonly window: Float64Array;
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
 * Source: Wiener–Khinchin theorem.
 */
export function createFrameCorrelator(plan: FramePlan): FrameCorrelator {
  const { fftSize, windowSamples, hopSamples, longestLag } = plan;
  const fourier = createTransform(fftSize);
  const window = hannWindow(windowSamples);
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
  /** twice the sum of each spectrum: the autocorrelation at lag 0 */
  const zero = new Float64Array(FRAMES_AT_ONCE);
  return {
    firstBin,
    window,
    correlate(samples, frame) {
      for (let pair = 0; pair < FRAMES_AT_ONCE; pair += 2) {
        windowPair(samples, (frame + pair) * hopSamples - windowSamples / 2, hopSamples, window, input);
        fourier.transform(input, output);
        splitPowers(output, fftSize, firstBin, power, zero, pair);
      }
      packPowers(power, fftSize, packed);
      fourier.transform(packed, output);
      unpackLags(output, fftSize, oddScale, lags);
      lags.forEach((all, k) => {
        mirror(all, zero[k]!);
      });
      return { power, lags: lags.map((all, k) => (zero[k]! / fftSize > LEAST_ENERGY ? all : null)) };
    },
  };
}

function hannWindow(length: number): Float64Array {
  return Float64Array.from({ length }, (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / length));
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

/** Power spectra of the two real signals in a complex transform, and twice their sums. */
function splitPowers(
  spectrum: Float64Array,
  fftSize: number,
  firstBin: number,
  power: readonly Float64Array[],
  zero: Float64Array,
  pair: number,
): void {
  const a = power[pair]!;
  const b = power[pair + 1]!;
  const half = fftSize / 2;
  let sumA = 0;
  let sumB = 0;
  for (let k = firstBin; k <= half; k++) {
    const m = fftSize - k;
    const xr = spectrum[2 * k]!;
    const xi = spectrum[2 * k + 1]!;
    const yr = spectrum[2 * m]!;
    const yi = spectrum[2 * m + 1]!;
    const powerA = ((xr + yr) * (xr + yr) + (xi - yi) * (xi - yi)) / 4;
    const powerB = ((xi + yi) * (xi + yi) + (xr - yr) * (xr - yr)) / 4;
    a[k] = powerA;
    b[k] = powerB;
    sumA += powerA;
    sumB += powerB;
  }
  // the bin at half the size has no mirror
  zero[pair] = 2 * sumA - a[half]!;
  zero[pair + 1] = 2 * sumB - b[half]!;
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
