import { copyStretch } from '../decode/index.js';
import { fourfoldTransform, keptFor, openLoops, wholeNumbers } from '../simd/index.js';
import type { FramePlan } from './frame-plan.js';
import { bandEdges } from './spectral-change.js';
import { windowGain } from './window-gain.js';

/** Frames worked on at a time: their power spectra fill four complex transforms completely. */
export const FRAMES_AT_ONCE = 16;
/** Lags known on each side of those looked at, for reading values between two lags. */
export const SIDE_LAGS = 8;
/** Below this sum of the squared, tapered samples there is digital silence, and no period. */
const LEAST_ENERGY = 2e-10;
/** Numbers in a vector, and in a complex one. */
const [LANES, COMPLEX] = [4, 8];

/** Autocorrelations and spectra of a few frames in a row; the next call overwrites them. */
export interface CorrelatedFrames {
  /** power of each band, frame by frame */
  readonly bandPower: Float32Array;
  /**
   * autocorrelation of each tapered frame, 1 at lag 0, entry `SIDE_LAGS + lag`, from −SIDE_LAGS to SIDE_LAGS beyond the
   * longest lag; digital silence has none
   */
  readonly lags: readonly (Float32Array | null)[];
}

/** Correlates frames with memory of its own. */
export interface FrameCorrelator {
  /** how many bands the spectrum is cut into */
  readonly bands: number;
  /** 1 / autocorrelation of the taper in half lags, with value 1 at lag 0 */
  readonly gain: Float64Array;
  /**
   * @param samples mono at the plan's rate, silent beyond both ends
   * @param frame the first of FRAMES_AT_ONCE frames; frame f is centred at sample f * hopSamples
   * @returns what was found, valid until the next call
   */
  correlate(samples: Float32Array, frame: number): CorrelatedFrames;
  /**
   * @param which of the frames correlated last
   * @param least value of a peak
   * @returns the whole lags of the plan at which its autocorrelation, made up for the taper, has a peak; valid until the next
   * call
   */
  peaks(which: number, least: number): Int32Array;
}

/**
 * Tapered autocorrelation by FFT. On the way out two real frames share one complex transform; on the way back, where
 * spectra of power are even, four do. Four such transforms run side by side.
 *
 * @param plan from planFrames
 * @returns a correlator for recordings of that plan; those of the same plan share their memory
 *
 * Source: Wiener–Khinchin theorem.
 */
export const frameCorrelator: (plan: FramePlan) => FrameCorrelator = keptFor(createCorrelator);

function createCorrelator(plan: FramePlan): FrameCorrelator {
  const { fftSize, windowSamples, hopSamples, shortestLag, longestLag } = plan;
  const fourier = fourfoldTransform(fftSize);
  const taper = hannWindow(windowSamples);
  const gain = windowGain(taper, 2 * longestLag + 3);
  const firstBin = Math.max(1, Math.floor((0.7 * fftSize) / longestLag));
  const edges = bandEdges(firstBin, fftSize / 2);
  const bands = edges.length - 1;
  const taperLength = fours(windowSamples);
  const lagCount = fours(longestLag + SIDE_LAGS + 1);
  const row = SIDE_LAGS + lagCount;
  const spectrum = LANES * (fftSize / 2 + 1);
  const { loops, memory } = openLoops({
    ...{
      samples: (FRAMES_AT_ONCE - 1) * hopSamples + taperLength,
      taper: taperLength,
      twiddles: fourier.twiddles.length,
    },
    ...{ input: COMPLEX * fftSize, packed: COMPLEX * fftSize, one: COMPLEX * fftSize, other: COMPLEX * fftSize },
    ...{ a: spectrum, b: spectrum, c: spectrum, d: spectrum, sums: FRAMES_AT_ONCE },
    ...{ edges: edges.length, bandPower: FRAMES_AT_ONCE * bands },
    ...{ oddScale: lagCount, lags: FRAMES_AT_ONCE * row, gain: longestLag + 2, peaks: longestLag + 2 },
  });
  memory.taper.set(taper);
  memory.twiddles.set(fourier.twiddles);
  wholeNumbers(memory.edges).set(edges);
  // what turns the distance between lag and −lag into an autocorrelation
  const oddScale = (lag: number): number => (lag === 0 ? 0 : 0.25 / Math.sin((2 * Math.PI * lag) / fftSize));
  memory.oddScale.forEach((_, lag, all) => {
    all[lag] = oddScale(lag);
  });
  memory.gain.forEach((_, lag, all) => {
    all[lag] = gain[2 * lag]!;
  });
  const rows = Array.from({ length: FRAMES_AT_ONCE }, (_, f) => memory.lags.subarray(f * row, (f + 1) * row));
  const found = wholeNumbers(memory.peaks);
  const at = addressesOf(memory);
  const leastSum = LEAST_ENERGY * fftSize;

  const transformPair = (half: number, real: number, imaginary: number): void => {
    const bytes = 4 * 8 * half;
    loops.windowFrames(at.samples + bytes * hopSamples, hopSamples, at.taper, taperLength, at.input);
    const out = fourier.run(loops, memory.twiddles, [memory.input, memory.one, memory.other]).byteOffset;
    loops.splitPowers(out, fftSize, firstBin, real, imaginary, at.sums + bytes);
    loops.sumBands(real, at.edges, bands, at.bandPower + bytes * bands);
    loops.sumBands(imaginary, at.edges, bands, at.bandPower + bytes * bands + 4 * LANES * bands);
  };
  return {
    bands,
    gain,
    correlate(samples, frame) {
      copyStretch(memory.samples, samples, frame * hopSamples - windowSamples / 2);
      transformPair(0, at.a, at.b);
      transformPair(1, at.c, at.d);
      loops.packPowers(at.a, at.b, at.c, at.d, fftSize, at.packed);
      const out = fourier.run(loops, memory.twiddles, [memory.packed, memory.one, memory.other]).byteOffset;
      loops.unpackLags(out, fftSize, at.oddScale, lagCount, at.sums, leastSum, at.lags + 4 * SIDE_LAGS, 4 * row);
      rows.forEach(mirror);
      return { bandPower: memory.bandPower, lags: rows.map((all, f) => (memory.sums[f]! > leastSum ? all : null)) };
    },
    peaks(which, least) {
      const lags = rows[which]!.byteOffset + 4 * SIDE_LAGS;
      return found.subarray(0, loops.findPeaks(lags, at.gain, shortestLag, longestLag, least, at.peaks));
    },
  };
}

function fours(length: number): number {
  return LANES * Math.ceil(length / LANES);
}

function addressesOf<Name extends string>(memory: Readonly<Record<Name, Float32Array>>): Record<Name, number> {
  const entries = Object.entries<Float32Array>(memory).map(([name, { byteOffset }]) => [name, byteOffset]);
  return Object.fromEntries(entries) as Record<Name, number>;
}

function hannWindow(length: number): Float64Array {
  return Float64Array.from({ length }, (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / length));
}

/** Completes an autocorrelation by its value at lag 0 and a few negative lags. */
function mirror(lags: Float32Array): void {
  lags[SIDE_LAGS] = 1;
  for (let lag = 1; lag <= SIDE_LAGS; lag++) lags[SIDE_LAGS - lag] = lags[SIDE_LAGS + lag]!;
}
