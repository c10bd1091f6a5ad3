import { midiToHz } from '../base/index.js';
import { transformSize } from '../simd/index.js';

/** The range of sounding pitch to listen for, MIDI numbers. */
export interface PitchRange {
  readonly lowestMidi: number;
  readonly highestMidi: number;
}

/** How a recording is cut into pitch frames. */
export interface FramePlan {
  /** keep one sample of so many after the low-pass filter */
  readonly decimation: number;
  /** sample rate after decimation */
  readonly rateHz: number;
  /** samples in one analysis window, after decimation */
  readonly windowSamples: number;
  /** samples between frames, after decimation */
  readonly hopSamples: number;
  readonly fftSize: number;
  /** shortest and longest period looked for, in decimated samples */
  readonly shortestLag: number;
  readonly longestLag: number;
}

/** Samples wanted in the shortest period, so that a parabola finds its peak. */
const SAMPLES_A_PERIOD = 6;
/** Periods of the lowest note that the tapered window holds; three is the least an autocorrelation can do with (Boersma 1993). */
const PERIODS_A_WINDOW = 3.6;
/** Enough for the noise of an attack to be seen; a sixth of 44.1 kHz. */
const LOWEST_RATE_HZ = 7300;
const HOP_SECONDS = 0.0058;
const HEADROOM_SEMITONES = 4;
/**
 * A sixteenth of a Hann window at each end is so small that the two ends may lie over each other in the circular
 * correlation: at the longest lag that adds less than 1e-4 of the energy.
 */
const ENDS_OF_TAPER = 16;

/**
 * Chooses rate, window and hop so that low brass gets long windows, piccolo short ones, and each costs about the same.
 *
 * @param sampleRateHz rate of the recording
 * @param range sounding pitches of the part
 * @returns the plan
 *
 * Source: window length after Boersma 1993, "Accurate short-term analysis of the fundamental frequency".
 */
export function planFrames(sampleRateHz: number, range: PitchRange): FramePlan {
  const lowHz = midiToHz(range.lowestMidi);
  const highHz = midiToHz(range.highestMidi + HEADROOM_SEMITONES);
  const wanted = Math.max(LOWEST_RATE_HZ, SAMPLES_A_PERIOD * highHz);
  const decimation = Math.max(1, Math.floor(sampleRateHz / wanted));
  const rateHz = sampleRateHz / decimation;
  const windowSamples = 2 * Math.round((PERIODS_A_WINDOW * rateHz) / lowHz / 2);
  const longestLag = Math.floor(windowSamples / 2);
  const overlap = Math.floor(windowSamples / ENDS_OF_TAPER);
  return {
    decimation,
    rateHz,
    windowSamples,
    hopSamples: Math.max(1, Math.round(HOP_SECONDS * rateHz)),
    fftSize: transformSize(windowSamples + longestLag - overlap),
    shortestLag: Math.max(3, Math.floor(rateHz / highHz)),
    longestLag,
  };
}
