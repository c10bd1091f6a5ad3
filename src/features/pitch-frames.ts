import { FRAMES_AT_ONCE, frameCorrelator } from './correlate-frames.js';
import type { FramePlan } from './frame-plan.js';
import { LEAST_AT_LAG, PeriodReader } from './read-periods.js';
import { spectralChange } from './spectral-change.js';

/** Pitch candidates and spectral change of every frame. */
export interface PitchFrames {
  readonly frames: number;
  readonly candidateMidi: Float32Array;
  readonly candidateClarity: Float32Array;
  readonly change: Float32Array;
}

/**
 * Periods from the autocorrelation of each frame, and how much its spectrum differs from that of the frames before.
 *
 * @param samples mono at `plan.rateHz`
 * @param plan from {@link planFrames}
 * @returns up to CANDIDATES pitches a frame (frame f is centred at sample f * hopSamples) and the spectral change
 *
 * Source: Boersma 1993; the functions called here name theirs.
 */
export function trackPitch(samples: Float32Array, plan: FramePlan): PitchFrames {
  const frames = Math.max(1, Math.floor(samples.length / plan.hopSamples) + 1);
  const correlator = frameCorrelator(plan);
  const { bands } = correlator;
  const reader = new PeriodReader(plan, correlator.gain, frames);
  const bandPower = new Float32Array(frames * bands);
  for (let first = 0; first < frames; first += FRAMES_AT_ONCE) {
    const found = correlator.correlate(samples, first);
    const count = Math.min(FRAMES_AT_ONCE, frames - first);
    bandPower.set(found.bandPower.subarray(0, count * bands), first * bands);
    for (let k = 0; k < count; k++) {
      const lags = found.lags[k]!;
      if (lags !== null) reader.read(lags, correlator.peaks(k, LEAST_AT_LAG), first + k);
    }
  }
  return {
    frames,
    candidateMidi: reader.candidateMidi,
    candidateClarity: reader.candidateClarity,
    change: spectralChange(bandPower, bands, frames),
  };
}
