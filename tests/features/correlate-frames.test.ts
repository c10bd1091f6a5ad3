import { describe, expect, it } from 'vitest';
import { FRAMES_AT_ONCE, frameCorrelator, SIDE_LAGS } from '../../src/features/correlate-frames.js';
import { planFrames } from '../../src/features/frame-plan.js';
import { hertz, noise } from '../helpers/tones.js';

const RANGES = [
  { name: 'a tuba', lowestMidi: 22, highestMidi: 65 },
  { name: 'a clarinet', lowestMidi: 50, highestMidi: 94 },
  { name: 'a piccolo', lowestMidi: 74, highestMidi: 108 },
];

/** The samples of one frame under a Hann window. Source: definition of the window; frames are centred on their hop. */
function tapered(samples: Float32Array, centre: number, length: number): number[] {
  return Array.from({ length }, (_, i) => {
    const weight = Math.sin((Math.PI * (i + 0.5)) / length) ** 2;
    return weight * (samples[centre - length / 2 + i] ?? 0);
  });
}

/** Source: definition of the autocorrelation, summed as it stands. */
const correlation = (x: readonly number[], lag: number): number =>
  x.reduce((sum, value, i) => sum + value * (x[i + lag] ?? 0), 0);

describe.each(RANGES)('frames for $name', (range) => {
  const plan = planFrames(44100, range);
  const { rateHz, windowSamples, hopSamples, shortestLag, longestLag } = plan;
  const hz = hertz(range.lowestMidi + 17);
  const samples = Float32Array.from(
    { length: 0.2 * rateHz },
    (_, i) => 0.3 * Math.sin((2 * Math.PI * hz * i) / rateHz),
  );

  it('have the autocorrelation that defines it, all sixteen of them', () => {
    const { correlate } = frameCorrelator(plan);
    const { lags } = correlate(samples, 0);
    for (let f = 0; f < FRAMES_AT_ONCE; f++) {
      const frame = tapered(samples, f * hopSamples, windowSamples);
      const energy = correlation(frame, 0);
      if (energy < 1e-6) continue;
      for (let lag = -SIDE_LAGS; lag <= longestLag; lag += 3) {
        const expected = correlation(frame, Math.abs(lag)) / energy;
        // the lowest bins are left out: a tone has next to nothing there, but where it begins
        const begins = f * hopSamples < windowSamples / 2;
        expect(Math.abs(lags[f]![SIDE_LAGS + lag]! - expected)).toBeLessThan(begins ? 0.05 : 2e-3);
      }
    }
    expect(lags.filter((one) => one !== null).length).toBeGreaterThan(10);
  });

  it('have peaks where the autocorrelation, made up for the taper, is higher than beside them', () => {
    const correlator = frameCorrelator(plan);
    const { lags } = correlator.correlate(samples, 4);
    const value = (lag: number): number => lags[2]![SIDE_LAGS + lag]! * correlator.gain[2 * lag]!;
    for (const least of [0.1, 0.6]) {
      const peaks = [...correlator.peaks(2, least)];
      const expected = Array.from({ length: longestLag - shortestLag + 1 }, (_, i) => shortestLag + i).filter(
        (lag) => value(lag) >= least && value(lag) >= value(lag - 1) && value(lag) > value(lag + 1),
      );
      expect(peaks).toEqual(expected);
      expect(peaks.length).toBeGreaterThan(0);
    }
  });

  it('are none where nothing sounds, and serve one recording after the other', () => {
    const { correlate } = frameCorrelator(plan);
    expect(correlate(new Float32Array(samples.length), 0).lags.every((one) => one === null)).toBe(true);
    const first = correlate(samples, 0).lags[5]!.slice();
    correlate(noise(0.2, -20), 0);
    expect(frameCorrelator(plan).correlate(samples, 0).lags[5]!).toEqual(first);
  });
});
