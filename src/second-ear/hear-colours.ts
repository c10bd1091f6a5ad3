import type { Engine } from 'essentia.js';
import { median, midiToHz, type NotMeasured, notMeasured } from '../base/index.js';
import type { NoteSpan, SampleStretch } from './hear-pitches.js';
import { loadEngine } from './load-engine.js';
import { FRAME } from './pitch-of-frame.js';
import { HIGHEST_RATE_HZ, slower } from './slower.js';

/** Frames looked at in a note, spread over it. */
const FRAMES = 6;
/** Left out at the beginning and the end of a note, in seconds. */
const BEGINNING = 0.12;
const END = 0.06;
const MOST_HARMONICS = 20;
/** A peak belongs to a harmonic up to so far from it, in shares of the fundamental. */
const TOLERANCE = 0.2;
const MOST_PEAKS = 100;
/** Nothing is looked for nearer to half the rate. */
const OF_RATE = 0.45;
/** A frame must hold so many periods, or its harmonics run into each other. */
const LEAST_PERIODS = 6;
/** Fewer harmonics below half the rate have no colour to speak of. */
const LEAST_HARMONICS = 3;

/** The harmonics of a note, medians over its steady part. */
export interface Colour {
  /** mean number of the harmonics, weighted by their amplitudes: 1 is a sine, more is brighter */
  readonly centroidHarmonics: number;
  /** energy of the odd harmonics over that of the even ones, dB */
  readonly oddOverEvenDb: number;
  /** shares of the first harmonic, of the second to fourth, and of all above */
  readonly tristimulus: readonly [number, number, number];
}

/**
 * Asks the second ear for the harmonics of long notes.
 *
 * @param samples mono, full scale = ±1
 * @param sampleRateHz their rate
 * @param notes in any order; `midi` as it sounds, fractional
 * @returns the colour of each, or why there is none
 *
 * Source: essentia.js: HarmonicPeaks, Tristimulus (Pollard & Jansson 1982); centroid, and odd over even, by definition. The
 * engine's own OddToEvenHarmonicEnergyRatio counts harmonics from nought, so that it calls the fundamental even.
 */
export async function hearColours(
  samples: SampleStretch,
  sampleRateHz: number,
  notes: readonly NoteSpan[],
): Promise<(Colour | NotMeasured)[]> {
  const engine = await loadEngine();
  const every = Math.ceil(sampleRateHz / HIGHEST_RATE_HZ);
  const rate = sampleRateHz / every;
  return notes.map(({ onset, offset, midi }) => {
    const hz = midiToHz(midi);
    if ((hz * FRAME) / rate < LEAST_PERIODS) return notMeasured('second-ear-too-low');
    if (LEAST_HARMONICS * hz > OF_RATE * rate) return notMeasured('second-ear-unclear');
    const first = Math.max(0, Math.ceil((onset + BEGINNING) * sampleRateHz));
    const last = Math.min(samples.length, Math.floor((offset - END) * sampleRateHz)) - FRAME * every;
    if (!(last >= first)) return notMeasured('second-ear-too-short');
    const frames = Array.from({ length: FRAMES }, (_, k) => {
      const from = first + Math.round(((last - first) * k) / (FRAMES - 1));
      return colourOf(engine, slower(samples.subarray(from, from + FRAME * every), every), rate, hz);
    }).filter((one) => one !== null);
    return frames.length < FRAMES ? notMeasured('second-ear-unclear') : middleOf(frames);
  });
}

function colourOf(engine: Engine, frame: Float32Array, rate: number, hz: number): Colour | null {
  const made: { delete(): void }[] = [];
  const kept = <T extends { delete(): void }>(vector: T): T => {
    made.push(vector);
    return vector;
  };
  try {
    const tapered = kept(engine.Windowing(kept(engine.arrayToVector(frame)), true, FRAME, 'hann', 0, false).frame);
    const spectrum = kept(engine.Spectrum(tapered, FRAME).spectrum);
    const peaks = engine.SpectralPeaks(spectrum, 0, OF_RATE * rate, MOST_PEAKS, hz / 2, 'frequency', rate);
    const [at, size] = [kept(peaks.frequencies), kept(peaks.magnitudes)];
    if (at.size() === 0) return null;
    const found = engine.HarmonicPeaks(at, size, hz, MOST_HARMONICS, TOLERANCE);
    const [frequencies, magnitudes] = [kept(found.harmonicFrequencies), kept(found.harmonicMagnitudes)];
    const shares = engine.vectorToArray(kept(engine.Tristimulus(frequencies, magnitudes).tristimulus));
    const sizes = engine.vectorToArray(magnitudes);
    const sum = sizes.reduce((total, value) => total + value, 0);
    const energy = (from: number): number => sizes.reduce((e, v, k) => (k % 2 === from ? e + v * v : e), 0);
    const [odd, even] = [energy(0), energy(1)];
    if (!(sum > 0) || !(odd > 0) || !(even > 0)) return null;
    return {
      centroidHarmonics: sizes.reduce((total, value, k) => total + (k + 1) * value, 0) / sum,
      oddOverEvenDb: 10 * Math.log10(odd / even),
      tristimulus: [shares[0] ?? 0, shares[1] ?? 0, shares[2] ?? 0],
    };
  } catch (error) {
    // The engine throws bare numbers, addresses of its own, where it cannot answer.
    if (typeof error === 'number') return null;
    throw error;
  } finally {
    for (const vector of made) vector.delete();
  }
}

function middleOf(frames: readonly Colour[]): Colour {
  const middle = (of: (one: Colour) => number): number => median(frames.map(of));
  return {
    centroidHarmonics: middle((one) => one.centroidHarmonics),
    oddOverEvenDb: middle((one) => one.oddOverEvenDb),
    tristimulus: [
      middle((one) => one.tristimulus[0]),
      middle((one) => one.tristimulus[1]),
      middle((one) => one.tristimulus[2]),
    ],
  };
}
