import { SIDE_LAGS } from './correlate-frames.js';
import type { FramePlan } from './frame-plan.js';
import { halfBandWeights } from './half-band.js';
import { CANDIDATES } from './types.js';

/** A peak below this share of periodicity is not a pitch. */
const LEAST_CLARITY = 0.35;
/** Between two lags it may be twice as high as at either, even for a tone of three samples. */
export const LEAST_AT_LAG = LEAST_CLARITY / 2;
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
  /** the frame that is read, and its curve, filled where it is asked for */
  private lags: Float32Array = new Float32Array(0);
  private readonly curve: Float64Array;
  /** entries of the curve that are known */
  private readonly known: Uint8Array;

  /**
   * @param plan from planFrames
   * @param gain from windowGain, as far as one lag beyond the longest
   * @param frames frames of the recording
   */
  constructor(plan: FramePlan, gain: Float64Array, frames: number) {
    this.plan = plan;
    this.gain = gain;
    this.curve = new Float64Array(this.gain.length);
    this.known = new Uint8Array(this.gain.length);
    this.candidateMidi = new Float32Array(frames * CANDIDATES);
    this.candidateClarity = new Float32Array(frames * CANDIDATES);
  }

  /**
   * Writes the candidates of one frame. Peaks in half lags stand at or beside those in whole lags.
   *
   * @param lags autocorrelation of the tapered frame, 1 at lag 0, entry `SIDE_LAGS + lag`
   * @param peaks whole lags at which it has a peak of at least LEAST_AT_LAG
   * @param frame whose candidates they are
   */
  read(lags: Float32Array, peaks: Int32Array, frame: number): void {
    const first = 2 * this.plan.shortestLag;
    const last = 2 * this.plan.longestLag;
    this.lags = lags;
    this.known.fill(0);
    this.found = 0;
    for (let p = 0; p < peaks.length; p++) {
      const t = 2 * peaks[p]!;
      for (let near = Math.max(first, t - 1); near <= Math.min(last - 1, t + 1); near++) this.tryPeak(near);
    }
    for (let c = 0; c < this.found; c++) {
      const period = this.refinePeriod(this.lag[c]!) / 2;
      this.candidateMidi[frame * CANDIDATES + c] = 69 + 12 * Math.log2(this.plan.rateHz / period / 440);
      this.candidateClarity[frame * CANDIDATES + c] = this.clarity[c]!;
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
    for (let near = t - 1; near <= t + 1; near++) if (this.known[near] === 0) this.fill(near);
  }

  private fill(t: number): void {
    const { lags, weights } = this;
    const below = SIDE_LAGS + (t >> 1);
    let value = lags[below]!;
    if (t % 2 === 1) {
      value = 0;
      for (let j = 0; j < SIDE_LAGS; j++) value += weights[j]! * (lags[below - j]! + lags[below + 1 + j]!);
    }
    this.curve[t] = value * this.gain[t]!;
    this.known[t] = 1;
  }
}

/** By how much the top of the parabola through three entries lies beside the middle one. */
function peakShift(left: number, here: number, right: number): number {
  const bend = left - 2 * here + right;
  return bend < 0 ? (left - right) / (2 * bend) : 0;
}
