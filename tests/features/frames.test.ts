import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimate } from '../../src/features/decimate.js';
import { planFrames } from '../../src/features/frame-plan.js';
import { hertz, noise } from '../helpers/tones.js';

// Sounding ranges. Source: orchestration handbooks (from memory): tuba from B♭0 or lower to F4, piccolo D5 to C8.
const TUBA = { lowestMidi: 22, highestMidi: 65 };
const CLARINET = { lowestMidi: 50, highestMidi: 94 };
const PICCOLO = { lowestMidi: 74, highestMidi: 108 };

/**
 * What the two ends of the window add to a circular correlation at its longest lag, as a share of the energy, for a signal
 * that is 1 everywhere. Source: Hann window by definition; circular correlation of size N adds lag N − m to lag m.
 */
function endsOverEachOther(windowSamples: number, longestLag: number, fftSize: number): number {
  const window = Array.from({ length: windowSamples }, (_, i) => Math.sin((Math.PI * (i + 0.5)) / windowSamples) ** 2);
  const correlation = (lag: number): number => window.reduce((sum, w, i) => sum + w * (window[i + lag] ?? 0), 0);
  return correlation(fftSize - longestLag) / correlation(0);
}

describe('the frame plan', () => {
  it('gives long windows to the tuba, short ones to the piccolo', () => {
    const seconds = (range: typeof TUBA): number => {
      const plan = planFrames(44100, range);
      return plan.windowSamples / plan.rateHz;
    };
    expect(seconds(TUBA)).toBeGreaterThan(2 * seconds(CLARINET));
    expect(seconds(CLARINET)).toBeGreaterThan(2 * seconds(PICCOLO));
    expect(seconds(PICCOLO)).toBeLessThan(0.01);
  });

  it('serves any instrument at any rate', () => {
    const rates = fc.constantFrom(8000, 11025, 22050, 32000, 44100, 48000, 88200, 96000, 192000);
    fc.assert(
      fc.property(
        rates,
        fc.integer({ min: 22, max: 100 }),
        fc.integer({ min: 0, max: 40 }),
        (rate, lowestMidi, span) => {
          const plan = planFrames(rate, { lowestMidi, highestMidi: Math.min(108, lowestMidi + span) });
          expect(plan.rateHz * plan.decimation).toBeCloseTo(rate, 6);
          // Source: Boersma 1993: three periods of the lowest note are the least; the sampling theorem for the highest.
          expect(plan.windowSamples).toBeGreaterThanOrEqual(3 * (plan.rateHz / hertz(lowestMidi)) - 1);
          if (rate >= 11025) expect(plan.rateHz).toBeGreaterThan(2 * hertz(Math.min(108, lowestMidi + span)));
          expect(plan.longestLag).toBeGreaterThan(plan.rateHz / hertz(lowestMidi));
          expect(plan.shortestLag).toBeLessThan(plan.rateHz / hertz(Math.min(108, lowestMidi + span)) + 3);
          expect(endsOverEachOther(plan.windowSamples, plan.longestLag, plan.fftSize)).toBeLessThan(1e-4);
          const hop = plan.hopSamples / plan.rateHz;
          expect(hop).toBeGreaterThan(0.004);
          expect(hop).toBeLessThan(0.008);
        },
      ),
    );
  });
});

describe('decimation', () => {
  const RATE = 48000;
  const sine = (hz: number): Float32Array =>
    Float32Array.from({ length: RATE / 2 }, (_, i) => 0.5 * Math.sin((2 * Math.PI * hz * i) / RATE));
  /** Level of the inner part against that of the input, dB. */
  const gainDb = (hz: number, factor: number): number => {
    const out = decimate(sine(hz), factor);
    const inner = out.subarray(100, out.length - 100);
    return 10 * Math.log10(inner.reduce((sum, x) => sum + x * x, 0) / inner.length / 0.125);
  };

  // The cut-off lies at 0.45 of the new rate. A Hamming window of 12 taps a step makes the transition around it about
  // 0.28 of the new rate wide and lets −53 dB through beyond (Oppenheim & Schafer, table of windows). What is folded back
  // from just above the new Nyquist frequency lands just below it, far above any fundamental the plan looks for.
  it.each([2, 3, 4, 5])('by %i keeps what is below 0.3 of the new rate within 0.1 dB', (factor) => {
    for (const share of [0.05, 0.1, 0.2, 0.3])
      expect(Math.abs(gainDb((share * RATE) / factor, factor))).toBeLessThan(0.1);
  });

  it.each([2, 3, 4, 5])('by %i removes what would come back as another pitch', (factor) => {
    for (const share of [0.62, 0.7, 0.8, 0.95]) expect(gainDb((share * RATE) / factor, factor)).toBeLessThan(-46);
  });

  it('does not delay: sample k of the result is sample k times the factor of the input', () => {
    const slow = sine(200);
    const out = decimate(slow, 4);
    for (let k = 100; k < out.length - 100; k += 37) expect(out[k]!).toBeCloseTo(slow[4 * k]!, 2);
  });

  // Source: definition. Lengths around the stretches in which it is made, and odd ones.
  it.each([1, 5, 27, 8191, 8192, 8193, 16411, 30001])('by 4 is halving twice, for %i samples', (length) => {
    const samples = noise(1, -20).subarray(0, length);
    const once = decimate(decimate(samples, 2), 2);
    const out = decimate(samples, 4);
    expect(out).toHaveLength(once.length);
    for (let k = 0; k < out.length; k++) expect(Math.abs(out[k]! - once[k]!)).toBeLessThan(1e-7);
  });

  // Source: definition; what is decoded when it is asked for is decimated in blocks, as an array is.
  it('is the same for samples that are decoded when they are asked for', () => {
    const whole = Float32Array.from({ length: 50_001 }, (_, i) => ((i * 7919) % 997) / 997 - 0.5);
    const asked = { length: whole.length, subarray: (from?: number, to?: number) => whole.slice(from, to) };
    for (const factor of [1, 2, 3, 4, 5, 6]) expect(decimate(asked, factor)).toEqual(decimate(whole, factor));
  });

  it('keeps a constant, covers the whole input, and by 1 changes nothing', () => {
    const flat = new Float32Array(1001).fill(0.25);
    const out = decimate(flat, 4);
    expect(out).toHaveLength(251);
    for (const x of out.subarray(20, 230)) expect(x).toBeCloseTo(0.25, 6);
    expect(decimate(flat, 1)).toEqual(flat);
    expect(decimate(new Float32Array(0), 3)).toHaveLength(0);
  });
});
