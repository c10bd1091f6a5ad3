import { describe, expect, it } from 'vitest';
import { CANDIDATES, type Features, listen, type PitchRange } from '../../src/features/index.js';
import { join, noise, RATE, type Spectrum, silence, sum, takeOf, tone } from '../helpers/tones.js';

/** First candidates and their clarity between two times. */
function heard(features: Features, fromSeconds: number, toSeconds: number): { midi: number; clarity: number }[] {
  const frames: { midi: number; clarity: number }[] = [];
  for (let f = 0; f < features.pitchFrames; f++) {
    const at = f * features.pitchHopSeconds;
    if (at < fromSeconds || at > toSeconds) continue;
    frames.push({ midi: features.candidateMidi[f * CANDIDATES]!, clarity: features.candidateClarity[f * CANDIDATES]! });
  }
  return frames;
}

const around = (midi: number): PitchRange => ({ lowestMidi: Math.floor(midi) - 7, highestMidi: Math.ceil(midi) + 7 });

// From the lowest tuba note to the highest piccolo note, 29 Hz to 4.2 kHz, on and between the semitones.
// Source: MIDI tuning table (22 = 29.14 Hz, 108 = 4186 Hz).
const PITCHES = [22, 25.4, 29, 34.25, 41, 46.5, 52, 57.31, 62, 69, 74.5, 81, 88.77, 95, 101.5, 108];
const SPECTRA: readonly Spectrum[] = ['sine', 'all-harmonics', 'odd-harmonics'];

/**
 * A steady tone has one exact period, so what remains is the error of reading a peak between two samples. It was found
 * below 0.5 cents everywhere; a just noticeable difference is about 10 (Hill & Summers 2007).
 */
const BOUND_CENTS = 1;

describe.each(SPECTRA)('the pitch of a steady tone, %s', (spectrum) => {
  it.each(PITCHES)('at MIDI %d is right in every frame, never an octave off', (midi) => {
    const features = listen(takeOf(tone(midi, 0.6, spectrum)), around(midi));
    // windows of the lowest notes reach a quarter of a second each way
    const frames = heard(features, 0.2, 0.4);
    expect(frames.length).toBeGreaterThan(25);
    for (const frame of frames) {
      expect(Math.abs(100 * (frame.midi - midi))).toBeLessThan(BOUND_CENTS);
      expect(frame.clarity).toBeGreaterThan(0.9);
    }
  });
});

describe('the ear', () => {
  it('needs no hint of the range: tuba to piccolo with the same ears', () => {
    for (const midi of [29, 50, 71, 92, 105]) {
      for (const { midi: found } of heard(listen(takeOf(tone(midi, 0.6))), 0.25, 0.35)) {
        expect(Math.abs(100 * (found - midi))).toBeLessThan(BOUND_CENTS);
      }
    }
  });

  it('hears the fundamental that is missing from the spectrum', () => {
    // harmonics 2 to 5 of 220 Hz; source: residue pitch, as in acoustics textbooks
    const parts = [2, 3, 4, 5].map((k) => tone(57 + 12 * Math.log2(k), 0.5, 'sine', 0.2));
    const features = listen(takeOf(parts.reduce(sum)), around(57));
    for (const { midi } of heard(features, 0.2, 0.3)) expect(Math.abs(100 * (midi - 57))).toBeLessThan(2);
  });

  it('stays within five cents when noise is 20 dB below the tone', () => {
    const signal = sum(tone(67, 0.8, 'sine', 0.3), noise(0.8, 20 * Math.log10(0.3 / Math.SQRT2) - 20));
    const off = heard(listen(takeOf(signal), around(67)), 0.2, 0.6).map(({ midi }) => Math.abs(100 * (midi - 67)));
    expect(Math.max(...off)).toBeLessThan(5);
  });

  it('hears nothing in digital silence, and little periodicity in white noise', () => {
    const quiet = listen(takeOf(silence(0.5)), around(69));
    expect(quiet.candidateMidi.every((midi) => midi === 0)).toBe(true);
    const hiss = heard(listen(takeOf(noise(1, -20)), around(69)), 0.1, 0.9);
    const clear = hiss.filter(({ clarity }) => clarity > 0.8).length;
    expect(clear / hiss.length).toBeLessThan(0.05);
  });

  it('places a frame where its centre is: a change of pitch comes when it comes', () => {
    const at = 0.5;
    const features = listen(takeOf(join(tone(69, at), tone(76, 0.5))), { lowestMidi: 62, highestMidi: 83 });
    let last = 0;
    let first = Number.POSITIVE_INFINITY;
    for (let f = 0; f < features.pitchFrames; f++) {
      const seconds = f * features.pitchHopSeconds;
      const midi = features.candidateMidi[f * CANDIDATES]!;
      if (Math.abs(midi - 69) < 0.3 && seconds < 0.9) last = seconds;
      if (Math.abs(midi - 76) < 0.3) first = Math.min(first, seconds);
    }
    expect(Math.abs((last + first) / 2 - at)).toBeLessThan(0.01);
  });

  it('orders candidates by strength and marks the places that are empty', () => {
    const { candidateMidi, candidateClarity, pitchFrames } = listen(takeOf(tone(60, 0.4)), around(60));
    expect(candidateMidi).toHaveLength(CANDIDATES * pitchFrames);
    for (let at = 0; at < candidateMidi.length; at++) {
      expect(candidateClarity[at]!).toBeGreaterThanOrEqual(0);
      expect(candidateClarity[at]!).toBeLessThanOrEqual(1 + 1e-6);
      if (candidateMidi[at] === 0) expect(candidateClarity[at]).toBe(0);
    }
  });

  it('tells how long the recording is', () => {
    expect(listen(takeOf(silence(0.75)), around(69)).durationSeconds).toBeCloseTo(0.75, 6);
    expect(listen(takeOf(new Float32Array(22050), 22050), around(69)).durationSeconds).toBe(1);
    expect(listen(takeOf(new Float32Array(0)), around(69)).durationSeconds).toBe(0);
  });
});

describe('gain', () => {
  const music = join(noise(0.2, -70), tone(64, 0.4), tone(67, 0.4, 'odd-harmonics'), noise(0.2, -70));
  const loud = listen(takeOf(music), { lowestMidi: 57, highestMidi: 74 });

  // A factor of two changes exponents only; source: IEEE 754.
  it.each([0.5, 0.03125, 2])('%d times as loud: pitch, clarity and change are the same', (gain) => {
    const other = listen(takeOf(music.map((x) => gain * x)), { lowestMidi: 57, highestMidi: 74 });
    expect(other.candidateMidi).toEqual(loud.candidateMidi);
    expect(other.candidateClarity).toEqual(loud.candidateClarity);
    other.change.forEach((change, f) => {
      expect(change).toBeCloseTo(loud.change[f]!, 3);
    });
  });

  it('moves the power by its square and the floor by its decibels', () => {
    const other = listen(takeOf(music.map((x) => 0.5 * x)), { lowestMidi: 57, highestMidi: 74 });
    other.power.forEach((power, f) => {
      expect(power).toBeCloseTo(loud.power[f]! / 4, 9);
    });
    expect(other.noiseFloorDb - loud.noiseFloorDb).toBeCloseTo(-6.0206, 3);
  });
});

describe('spectral change', () => {
  const range: PitchRange = { lowestMidi: 55, highestMidi: 80 };
  const at = (features: Features, fromSeconds: number, toSeconds: number): { most: number; seconds: number } => {
    let [most, seconds] = [0, 0];
    for (let f = 0; f < features.pitchFrames; f++) {
      const now = f * features.pitchHopSeconds;
      if (now < fromSeconds || now > toSeconds || features.change[f]! <= most) continue;
      [most, seconds] = [features.change[f]!, now];
    }
    return { most, seconds };
  };
  const hiss = (samples: Float32Array): Float32Array => sum(samples, noise(samples.length / RATE, -75));

  it('peaks at the onset after a gap, and stays low while a tone is held', () => {
    const features = listen(takeOf(hiss(join(tone(67, 0.5), silence(0.1), tone(67, 0.5)))), range);
    const onset = at(features, 0.4, 0.8);
    expect(Math.abs(onset.seconds - 0.6)).toBeLessThan(0.02);
    expect(onset.most).toBeGreaterThan(0.25);
    expect(onset.most).toBeGreaterThan(10 * at(features, 0.15, 0.4).most);
    expect(onset.most).toBeGreaterThan(10 * at(features, 0.75, 0.95).most);
  });

  it('peaks where one note becomes another without a gap', () => {
    const features = listen(takeOf(hiss(join(tone(60, 0.5), tone(67, 0.5)))), range);
    const onset = at(features, 0.15, 0.85);
    expect(Math.abs(onset.seconds - 0.5)).toBeLessThan(0.02);
  });
});
