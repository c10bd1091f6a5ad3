import FFT from 'fft.js';
import type { FramePlan } from './frame-plan.js';
import { CANDIDATES } from './types.js';

/** Pitch candidates and spectral change of every frame. */
export interface PitchFrames {
  readonly frames: number;
  readonly candidateMidi: Float32Array;
  readonly candidateClarity: Float32Array;
  readonly change: Float32Array;
}

/** A peak below this share of periodicity is not a pitch. */
const LEAST_CLARITY = 0.35;
/** What a peak loses for each octave it lies below the shortest lag, so that the first of equal peaks wins (Boersma 1993). */
const OCTAVE_COST = 0.05;
/** Lags between the samples: a bright tone's peak is too narrow to be read from whole samples. */
const OVERSAMPLING = 2;
/** Spectral bands an octave for the change function. */
const BANDS_AN_OCTAVE = 3;
/** Frames between the two spectra whose difference is the change. */
const CHANGE_SPAN = 2;

/**
 * Tapered autocorrelation by FFT, two frames in one complex transform.
 *
 * @param samples mono at `plan.rateHz`
 * @param plan from {@link planFrames}
 * @returns up to CANDIDATES pitches a frame (frame f is centred at sample f * hopSamples) and the spectral change
 *
 * Source: Boersma 1993 (autocorrelation divided by that of the window); parabolic peaks; periods refined on their
 * multiples. Change: half-wave rectified difference of log band powers, as in spectral-flux onset detection
 * (Bello et al. 2005).
 * Differs: bands instead of bins, so vibrato moves the change function less.
 */
export function trackPitch(samples: Float32Array, plan: FramePlan): PitchFrames {
  const frames = Math.max(1, Math.floor(samples.length / plan.hopSamples) + 1);
  const state = createState(plan, frames);
  for (let frame = 0; frame < frames; frame += 2) {
    transformPair(samples, plan, state, frame);
    readPeaks(plan, state, frame, 0);
    if (frame + 1 < frames) readPeaks(plan, state, frame + 1, 1);
  }
  return {
    frames,
    candidateMidi: state.candidateMidi,
    candidateClarity: state.candidateClarity,
    change: changeOf(state.bandPower, state.bands, frames),
  };
}

interface State {
  readonly fft: FFT;
  readonly inverse: FFT;
  readonly input: Float64Array;
  readonly spectrum: Float64Array;
  readonly powers: Float64Array;
  readonly correlation: Float64Array;
  readonly window: Float64Array;
  /** 1 / autocorrelation of the window, by lag, with value 1 at lag 0 */
  readonly windowGain: Float64Array;
  readonly bandOfBin: Int16Array;
  readonly bands: number;
  readonly bandPower: Float32Array;
  readonly firstBin: number;
  readonly lag: Float64Array;
  readonly value: Float64Array;
  readonly candidateMidi: Float32Array;
  readonly candidateClarity: Float32Array;
  readonly normalised: Float64Array;
}

function createState(plan: FramePlan, frames: number): State {
  const { fftSize, windowSamples, rateHz, longestLag } = plan;
  const window = Float64Array.from(
    { length: windowSamples },
    (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / windowSamples),
  );
  const lowestHz = rateHz / longestLag;
  const firstBin = Math.max(1, Math.floor((0.7 * lowestHz * fftSize) / rateHz));
  const bandOfBin = Int16Array.from({ length: fftSize / 2 + 1 }, (_, k) =>
    k < firstBin ? -1 : Math.floor(BANDS_AN_OCTAVE * Math.log2(k / firstBin)),
  );
  const bands = (bandOfBin[fftSize / 2] as number) + 1;
  return {
    fft: new FFT(fftSize),
    inverse: new FFT(OVERSAMPLING * fftSize),
    input: new Float64Array(2 * fftSize),
    spectrum: new Float64Array(2 * fftSize),
    powers: new Float64Array(2 * OVERSAMPLING * fftSize),
    correlation: new Float64Array(2 * OVERSAMPLING * fftSize),
    window,
    windowGain: windowGain(window, OVERSAMPLING * longestLag),
    bandOfBin,
    bands,
    // one frame more than there are, because they are transformed in pairs
    bandPower: new Float32Array((frames + 1) * bands),
    firstBin,
    lag: new Float64Array(CANDIDATES),
    value: new Float64Array(CANDIDATES),
    candidateMidi: new Float32Array(frames * CANDIDATES),
    candidateClarity: new Float32Array(frames * CANDIDATES),
    normalised: new Float64Array(OVERSAMPLING * longestLag + 2),
  };
}

function windowGain(window: Float64Array, longestLag: number): Float64Array {
  const gain = new Float64Array(longestLag + 2);
  for (let lag = 0; lag < gain.length; lag++) {
    const shift = Math.floor(lag / OVERSAMPLING);
    const between = lag / OVERSAMPLING - shift;
    let sum = 0;
    for (let i = 0; i + shift + 1 < window.length; i++) {
      sum += window[i]! * (window[i + shift]! * (1 - between) + window[i + shift + 1]! * between);
    }
    gain[lag] = sum;
  }
  return gain.map((g) => gain[0]! / g);
}

/** Leaves the autocorrelations of frames `frame` and `frame + 1` in the real and imaginary parts of `correlation`. */
function transformPair(samples: Float32Array, plan: FramePlan, state: State, frame: number): void {
  const { input, spectrum, powers, correlation, window, fft, bands, bandOfBin, bandPower } = state;
  const { fftSize, windowSamples, hopSamples } = plan;
  const first = frame * hopSamples - windowSamples / 2;
  const inside = first >= 0 && first + hopSamples + windowSamples <= samples.length;
  const from = inside ? samples : padded(samples, first, hopSamples + windowSamples);
  const start = inside ? first : 0;
  for (let i = 0; i < windowSamples; i++) {
    const weight = window[i]!;
    input[2 * i] = weight * from[start + i]!;
    input[2 * i + 1] = weight * from[start + hopSamples + i]!;
  }
  fft.transform(spectrum, input);
  const half = fftSize / 2;
  const row = frame * bands;
  for (let k = state.firstBin; k <= half; k++) {
    const m = fftSize - k;
    const mirror = OVERSAMPLING * fftSize - k;
    const xr = spectrum[2 * k]!;
    const xi = spectrum[2 * k + 1]!;
    const yr = spectrum[2 * m]!;
    const yi = spectrum[2 * m + 1]!;
    const a = ((xr + yr) * (xr + yr) + (xi - yi) * (xi - yi)) / 4;
    const b = ((xi + yi) * (xi + yi) + (xr - yr) * (xr - yr)) / 4;
    powers[2 * k] = a;
    powers[2 * k + 1] = b;
    powers[2 * mirror] = a;
    powers[2 * mirror + 1] = b;
    const band = bandOfBin[k]!;
    bandPower[row + band] = bandPower[row + band]! + a;
    bandPower[row + bands + band] = bandPower[row + bands + band]! + b;
  }
  state.inverse.inverseTransform(correlation, powers);
}

/** A stretch that reaches beyond the recording, silent there. */
function padded(samples: Float32Array, first: number, length: number): Float32Array {
  return Float32Array.from({ length }, (_, i) => samples[first + i] ?? 0);
}

/** Finds the periodicity peaks of one frame and writes its candidates. */
function readPeaks(plan: FramePlan, state: State, frame: number, part: 0 | 1): void {
  const { normalised, correlation, windowGain: gain, lag, value } = state;
  const zero = correlation[part]!;
  if (!(zero > 1e-10)) return;
  const last = OVERSAMPLING * plan.longestLag;
  for (let t = 1; t <= last; t++) normalised[t] = (correlation[2 * t + part]! / zero) * gain[t]!;
  let found = 0;
  for (let t = OVERSAMPLING * plan.shortestLag; t < last; t++) {
    const here = normalised[t]!;
    if (here < LEAST_CLARITY || here < normalised[t - 1]! || here <= normalised[t + 1]!) continue;
    const peak = parabola(normalised, t);
    const strength = Math.min(1, peak.height) - OCTAVE_COST * Math.log2(peak.at / OVERSAMPLING / plan.shortestLag);
    found = insert(lag, value, found, peak.at, strength);
  }
  for (let c = 0; c < found; c++) {
    const period = refinePeriod(normalised, lag[c]!, last) / OVERSAMPLING;
    state.candidateMidi[frame * CANDIDATES + c] = 69 + 12 * Math.log2(plan.rateHz / period / 440);
    const clarity = value[c]! + OCTAVE_COST * Math.log2(lag[c]! / OVERSAMPLING / plan.shortestLag);
    state.candidateClarity[frame * CANDIDATES + c] = clarity;
  }
}

function parabola(curve: Float64Array, t: number): { at: number; height: number } {
  const left = curve[t - 1]!;
  const right = curve[t + 1]!;
  const bend = left - 2 * curve[t]! + right;
  const shift = bend < 0 ? (left - right) / (2 * bend) : 0;
  return { at: t + shift, height: curve[t]! - ((left - right) * shift) / 4 };
}

/** Keeps the best CANDIDATES, best first; returns how many there are. */
function insert(lag: Float64Array, value: Float64Array, count: number, at: number, strength: number): number {
  let place = Math.min(count, CANDIDATES);
  while (place > 0 && value[place - 1]! < strength) {
    if (place < CANDIDATES) {
      value[place] = value[place - 1]!;
      lag[place] = lag[place - 1]!;
    }
    place--;
  }
  if (place < CANDIDATES) {
    value[place] = strength;
    lag[place] = at;
  }
  return Math.min(CANDIDATES, count + 1);
}

/** Follows the peak to its multiples: the period from k periods is k times as exact. */
function refinePeriod(curve: Float64Array, lag: number, last: number): number {
  let period = lag;
  for (let times = 2; times * period < last - 1; times++) {
    const guess = Math.round(times * period);
    let t = guess;
    if (curve[t - 1]! > curve[t]!) t--;
    else if (curve[t + 1]! > curve[t]!) t++;
    if (t <= 1 || t >= last || curve[t]! < 0.6 || curve[t]! < curve[t - 1]! || curve[t]! < curve[t + 1]!) break;
    period = parabola(curve, t).at / times;
  }
  return period;
}

function changeOf(bandPower: Float32Array, bands: number, frames: number): Float32Array {
  let strongest = 0;
  for (const p of bandPower) if (p > strongest) strongest = p;
  const floor = 1e-5 * strongest + 1e-20;
  const logs = bandPower.map((p) => Math.log10(p + floor));
  const change = new Float32Array(frames);
  for (let f = CHANGE_SPAN; f < frames; f++) {
    let sum = 0;
    for (let b = 0; b < bands; b++) {
      const rise = logs[f * bands + b]! - logs[(f - CHANGE_SPAN) * bands + b]!;
      if (rise > 0) sum += rise;
    }
    change[f] = sum / bands;
  }
  return change;
}
