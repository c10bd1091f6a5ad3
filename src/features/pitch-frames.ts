import { createFrameCorrelator, FRAMES_AT_ONCE } from './correlate-frames.js';
import type { FramePlan } from './frame-plan.js';
import { PeriodReader } from './read-periods.js';
import { bandEdges, spectralChange, sumBands } from './spectral-change.js';

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
  const correlator = createFrameCorrelator(plan);
  const reader = new PeriodReader(plan, correlator.window, frames);
  const edges = bandEdges(correlator.firstBin, plan.fftSize / 2);
  const bands = edges.length - 1;
  const bandPower = new Float32Array(frames * bands);
  for (let first = 0; first < frames; first += FRAMES_AT_ONCE) {
    const { power, lags } = correlator.correlate(samples, first);
    for (let k = 0; k < FRAMES_AT_ONCE && first + k < frames; k++) {
      sumBands(power[k]!, edges, bandPower, (first + k) * bands);
      const found = lags[k]!;
      if (found !== null) reader.read(found, first + k);
    }
  }
  return {
    frames,
    candidateMidi: reader.candidateMidi,
    candidateClarity: reader.candidateClarity,
    change: spectralChange(bandPower, bands, frames),
  };
}
