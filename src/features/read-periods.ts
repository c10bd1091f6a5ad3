import { LAGS_A_SAMPLE } from './correlate-frames.js';
import type { FramePlan } from './frame-plan.js';
import { CANDIDATES } from './types.js';

/** A peak below this share of periodicity is not a pitch. */
const LEAST_CLARITY = 0.35;
/** What a peak loses for each octave it lies below the shortest lag, so that the first of equal peaks wins (Boersma 1993). */
const OCTAVE_COST = 0.05;
/** Peaks at multiples of a period must be this high to refine it. */
const LEAST_MULTIPLE = 0.6;

/**
 * Reads the candidates of a frame from the peaks of its autocorrelation.
 *
 * Source: Boersma 1993; parabolic peaks; periods refined on their multiples.
 */
export class PeriodReader {
  /** fractional MIDI numbers, frame-major, CANDIDATES a frame, best first, 0 where there is none */
  readonly candidateMidi: Float32Array;
  /** periodicity of each, 0 to 1 */
  readonly candidateClarity: Float32Array;
  private readonly plan: FramePlan;
  private readonly lag = new Float64Array(CANDIDATES);
  private readonly strength = new Float64Array(CANDIDATES);
  private found = 0;

  /**
   * @param plan from planFrames
   * @param frames frames of the recording
   */
  constructor(plan: FramePlan, frames: number) {
    this.plan = plan;
    this.candidateMidi = new Float32Array(frames * CANDIDATES);
    this.candidateClarity = new Float32Array(frames * CANDIDATES);
  }

  /**
   * Finds the periodicity peaks of one frame and writes its candidates.
   *
   * @param curve autocorrelation, LAGS_A_SAMPLE entries a sample, 1 at lag 0
   * @param frame whose candidates they are
   */
  read(curve: Float64Array, frame: number): void {
    const { shortestLag, longestLag, rateHz } = this.plan;
    const last = LAGS_A_SAMPLE * longestLag;
    this.found = 0;
    for (let t = LAGS_A_SAMPLE * shortestLag; t < last; t++) {
      const here = curve[t]!;
      if (here < LEAST_CLARITY || here < curve[t - 1]! || here <= curve[t + 1]!) continue;
      const at = t + peakShift(curve, t);
      this.insert(at, Math.min(1, peakHeight(curve, t)) - this.octaveCost(at));
    }
    for (let c = 0; c < this.found; c++) {
      const period = refinePeriod(curve, this.lag[c]!, last) / LAGS_A_SAMPLE;
      this.candidateMidi[frame * CANDIDATES + c] = 69 + 12 * Math.log2(rateHz / period / 440);
      this.candidateClarity[frame * CANDIDATES + c] = this.strength[c]! + this.octaveCost(this.lag[c]!);
    }
  }

  private octaveCost(lag: number): number {
    return OCTAVE_COST * Math.log2(lag / (LAGS_A_SAMPLE * this.plan.shortestLag));
  }

  /** Keeps the best CANDIDATES, best first. */
  private insert(at: number, strength: number): void {
    let place = this.found;
    while (place > 0 && this.strength[place - 1]! < strength) {
      if (place < CANDIDATES) {
        this.strength[place] = this.strength[place - 1]!;
        this.lag[place] = this.lag[place - 1]!;
      }
      place--;
    }
    if (place < CANDIDATES) {
      this.strength[place] = strength;
      this.lag[place] = at;
    }
    this.found = Math.min(CANDIDATES, this.found + 1);
  }
}

/** By how much the top of the parabola through three entries lies beside the middle one. */
function peakShift(curve: Float64Array, t: number): number {
  const left = curve[t - 1]!;
  const right = curve[t + 1]!;
  const bend = left - 2 * curve[t]! + right;
  return bend < 0 ? (left - right) / (2 * bend) : 0;
}

function peakHeight(curve: Float64Array, t: number): number {
  return curve[t]! - ((curve[t - 1]! - curve[t + 1]!) * peakShift(curve, t)) / 4;
}

/** Follows the peak to its multiples: the period from k periods is k times as exact. */
function refinePeriod(curve: Float64Array, lag: number, last: number): number {
  let period = lag;
  for (let times = 2; times * period < last - 1; times++) {
    const guess = Math.round(times * period);
    let t = guess;
    if (curve[t - 1]! > curve[t]!) t--;
    else if (curve[t + 1]! > curve[t]!) t++;
    if (t <= 1 || t >= last || curve[t]! < LEAST_MULTIPLE || curve[t]! < curve[t - 1]! || curve[t]! < curve[t + 1]!)
      break;
    period = (t + peakShift(curve, t)) / times;
  }
  return period;
}
