import { SIDE_LAGS } from './correlate-frames.js';
import type { FramePlan } from './frame-plan.js';
import { halfBandWeights } from './half-band.js';
import { CANDIDATES } from './types.js';

/** A peak below this share of periodicity is not a pitch. */
const LEAST_CLARITY = 0.35;
/** Between two lags it may be twice as high as at either, even for a tone of three samples. */
const LEAST_AT_LAG = LEAST_CLARITY / 2;
/** What a peak loses for each octave it lies below the shortest lag, so that the first of equal peaks wins (Boersma 1993). */
const OCTAVE_COST = 0.05;
/** Peaks at multiples of a period must be this high to refine it. */
const LEAST_MULTIPLE = 0.6;
/** Shape of the window of the weights by which the value halfway between two lags is read. */
const SIDE_LAGS_BETA = 7;

/**
 * Reads the candidates of a frame from the peaks of its autocorrelation, divided by that of the window. A bright tone's
 * peak is too narrow to be read from whole lags: around peaks it is looked at in half lags. Entry t is lag t / 2.
 *
 * Source: Boersma 1993; parabolic peaks; periods refined on their multiples.
 */
export class PeriodReader {
  /** fractional MIDI numbers, frame-major, CANDIDATES a frame, best first, 0 where there is none */
  readonly candidateMidi: Float32Array;
  /** periodicity of each, 0 to 1 */
  readonly candidateClarity: Float32Array;
  private readonly plan: FramePlan;
  private readonly gain: Float64Array;
  private readonly weights = halfBandWeights(SIDE_LAGS, SIDE_LAGS_BETA);
  private readonly lag = new Float64Array(CANDIDATES);
  private readonly clarity = new Float64Array(CANDIDATES);
  private readonly strength = new Float64Array(CANDIDATES);
  private found = 0;
  /** the frame that is read, and its curve: whole lags are filled at once, those between when they are asked for */
  private lags: Float64Array = new Float64Array(0);
  private scale = 0;
  private readonly curve: Float64Array;
  /** entries of the curve between two lags that are known */
  private readonly known: Uint8Array;

  /**
   * @param plan from planFrames
   * @param window taper of a frame
   * @param frames frames of the recording
   */
  constructor(plan: FramePlan, window: Float64Array, frames: number) {
    this.plan = plan;
    this.gain = windowGain(window, 2 * plan.longestLag + 3);
    this.curve = new Float64Array(this.gain.length);
    this.known = new Uint8Array(this.gain.length);
    this.candidateMidi = new Float32Array(frames * CANDIDATES);
    this.candidateClarity = new Float32Array(frames * CANDIDATES);
  }

  /**
   * Finds the periodicity peaks of one frame and writes its candidates.
   *
   * @param lags autocorrelation of the tapered frame in any scale, entry `SIDE_LAGS + lag`, not 0 at lag 0
   * @param frame whose candidates they are
   */
  read(lags: Float64Array, frame: number): void {
    this.fillWholeLags(lags);
    this.findPeaks();
    for (let c = 0; c < this.found; c++) {
      const period = this.refinePeriod(this.lag[c]!) / 2;
      this.candidateMidi[frame * CANDIDATES + c] = 69 + 12 * Math.log2(this.plan.rateHz / period / 440);
      this.candidateClarity[frame * CANDIDATES + c] = this.clarity[c]!;
    }
  }

  private fillWholeLags(lags: Float64Array): void {
    const { curve, gain } = this;
    const { shortestLag, longestLag } = this.plan;
    const scale = 1 / lags[SIDE_LAGS]!;
    for (let lag = shortestLag - 1; lag <= longestLag + 1; lag++) {
      curve[2 * lag] = lags[SIDE_LAGS + lag]! * scale * gain[2 * lag]!;
    }
    this.lags = lags;
    this.scale = scale;
    this.known.fill(0);
  }

  /** Peaks in half lags stand at or beside those in whole lags. */
  private findPeaks(): void {
    const { curve } = this;
    const { shortestLag, longestLag } = this.plan;
    const first = 2 * shortestLag;
    const last = 2 * longestLag;
    this.found = 0;
    for (let t = first; t <= last; t += 2) {
      const here = curve[t]!;
      if (here < LEAST_AT_LAG || here < curve[t - 2]! || here <= curve[t + 2]!) continue;
      for (let near = Math.max(first, t - 1); near <= Math.min(last - 1, t + 1); near++) this.tryPeak(near);
    }
  }

  private tryPeak(t: number): void {
    this.fillAround(t);
    const left = this.curve[t - 1]!;
    const here = this.curve[t]!;
    const right = this.curve[t + 1]!;
    if (here < LEAST_CLARITY || here < left || here <= right) return;
    const shift = peakShift(left, here, right);
    const clarity = Math.min(1, here - ((left - right) * shift) / 4);
    const lag = t + shift;
    this.insert(lag, clarity, clarity - OCTAVE_COST * Math.log2(lag / (2 * this.plan.shortestLag)));
  }

  /** Keeps the best CANDIDATES, best first. */
  private insert(lag: number, clarity: number, strength: number): void {
    let place = this.found;
    while (place > 0 && this.strength[place - 1]! < strength) {
      if (place < CANDIDATES) {
        this.strength[place] = this.strength[place - 1]!;
        this.clarity[place] = this.clarity[place - 1]!;
        this.lag[place] = this.lag[place - 1]!;
      }
      place--;
    }
    if (place < CANDIDATES) {
      this.strength[place] = strength;
      this.clarity[place] = clarity;
      this.lag[place] = lag;
    }
    this.found = Math.min(CANDIDATES, this.found + 1);
  }

  /** Follows the peak to its multiples: the period from k periods is k times as exact. */
  private refinePeriod(lag: number): number {
    const { curve } = this;
    const last = 2 * this.plan.longestLag;
    let period = lag;
    for (let times = 2; times * period < last - 1; times++) {
      let t = Math.round(times * period);
      this.fillAround(t);
      if (curve[t - 1]! > curve[t]!) t--;
      else if (curve[t + 1]! > curve[t]!) t++;
      if (t >= last) break;
      this.fillAround(t);
      const left = curve[t - 1]!;
      const here = curve[t]!;
      const right = curve[t + 1]!;
      if (here < LEAST_MULTIPLE || here < left || here < right) break;
      period = (t + peakShift(left, here, right)) / times;
    }
    return period;
  }

  /** Fills the curve at entry t and its neighbours. */
  private fillAround(t: number): void {
    if (t % 2 === 1) this.fillBetween(t);
    else {
      this.fillBetween(t - 1);
      this.fillBetween(t + 1);
    }
  }

  private fillBetween(t: number): void {
    if (this.known[t] === 1) return;
    const { lags, weights } = this;
    const below = SIDE_LAGS + (t - 1) / 2;
    let between = 0;
    for (let j = 0; j < SIDE_LAGS; j++) between += weights[j]! * (lags[below - j]! + lags[below + 1 + j]!);
    this.curve[t] = between * this.scale * this.gain[t]!;
    this.known[t] = 1;
  }
}

/** 1 / autocorrelation of the window in half lags, with value 1 at lag 0. */
function windowGain(window: Float64Array, length: number): Float64Array {
  const gain = new Float64Array(length);
  for (let t = 0; t < length; t++) {
    const shift = t >> 1;
    const between = t / 2 - shift;
    let sum = 0;
    for (let i = 0; i + shift + 1 < window.length; i++) {
      sum += window[i]! * (window[i + shift]! * (1 - between) + window[i + shift + 1]! * between);
    }
    gain[t] = sum;
  }
  return gain.map((g) => gain[0]! / g);
}

/** By how much the top of the parabola through three entries lies beside the middle one. */
function peakShift(left: number, here: number, right: number): number {
  const bend = left - 2 * here + right;
  return bend < 0 ? (left - right) / (2 * bend) : 0;
}
