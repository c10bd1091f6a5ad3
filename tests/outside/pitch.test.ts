import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { decodeWav, encodeWav } from '../../src/decode/index.js';
import { CANDIDATES, type Features, listen } from '../../src/features/index.js';
import { measureTake } from '../../src/measure/index.js';
import { hearPitches } from '../../src/second-ear/index.js';
import { demoPart, hearTake, middle, shareWithin } from '../helpers/heard-take.js';
import { RATE, takeOf, tone } from '../helpers/tones.js';
import { aubioPitch, type HeardPitch, praatPitch } from './pitch-readers.js';
import { needs } from './programs.js';

const notes = join(import.meta.dirname, '../../fixtures/takes/notes');
const centsOver = (hertz: number, reference: number): number => 1200 * Math.log2(hertz / reference);

/** Frequency of the strongest candidate of each frame between two times. */
function heardHertz(features: Features, from: number, to: number): number[] {
  const first = Math.ceil(from / features.pitchHopSeconds);
  const last = Math.floor(to / features.pitchHopSeconds);
  return Array.from({ length: last - first + 1 }, (_, i) => features.candidateMidi[(first + i) * CANDIDATES]!)
    .filter((midi) => midi > 0)
    .map((midi) => 440 * 2 ** ((midi - 69) / 12));
}

const between = (pitches: readonly HeardPitch[], from: number, to: number): number[] =>
  pitches.filter(({ seconds }) => seconds >= from && seconds <= to).map(({ hertz }) => hertz);

/**
 * Single notes of real players (fixtures/ORIGINS.md) from 0.4 to 1.0 s: what praat 6.3.07 and aubio 0.4.9 say, medians.
 * The names give A4 = 440 Hz (ISO 16); the players are up to 14 cents off it, the readers up to 2 cents off each other.
 */
const REAL_NOTES = [
  { file: 'flute-c4', midi: 60, praat: 261.528, aubio: 261.752 },
  { file: 'flute-a5', midi: 81, praat: 880.605, aubio: 880.471 },
  { file: 'flute-c7', midi: 96, praat: 2092.382, aubio: 2094.875 },
  { file: 'trumpet-f3', midi: 53, praat: 173.512, aubio: 173.509 },
  { file: 'trumpet-g4', midi: 67, praat: 391.933, aubio: 392.089 },
  { file: 'trumpet-c6', midi: 84, praat: 1047.564, aubio: 1047.939 },
] as const;
/** Cents between our median and that of either reader: what they differ by themselves, and half a cent. */
const MEDIAN_BOUND = 2.5;

describe.each(REAL_NOTES)('a real note, $file', ({ file, midi, praat, aubio }) => {
  const wav = readFileSync(join(notes, `${file}.wav`));

  it('is heard where two other readers hear it, with or without a hint', () => {
    for (const range of [undefined, { lowestMidi: midi - 12, highestMidi: midi + 12 }]) {
      const heard = heardHertz(listen(decodeWav(wav), range), 0.4, 1);
      expect(heard.length).toBeGreaterThan(90);
      expect(Math.abs(centsOver(middle(heard), praat))).toBeLessThan(MEDIAN_BOUND);
      expect(Math.abs(centsOver(middle(heard), aubio))).toBeLessThan(MEDIAN_BOUND);
      // hardly ever another note first; which octave is meant is decided later, by the part
      const named = 440 * 2 ** ((midi - 69) / 12);
      expect(
        shareWithin(
          heard.map((hertz) => Math.abs(centsOver(hertz, named))),
          50,
        ),
      ).toBeGreaterThan(0.97);
    }
  });

  it('is still what praat hears', (context) => {
    needs(context, 'praat');
    expect(Math.abs(centsOver(middle(between(praatPitch(wav, 75, 4500), 0.4, 1)), praat))).toBeLessThan(0.5);
  });

  it('is still what aubio hears', (context) => {
    needs(context, 'aubiopitch');
    expect(Math.abs(centsOver(middle(between(aubioPitch(wav), 0.4, 1)), aubio))).toBeLessThan(0.5);
  });
});

/**
 * Source: MIDI tuning table (MIDI 1.0, appendix; equal temperament, note 69 = 440 Hz, ISO 16), rounded to 0.01 Hz: lowest
 * tuba note to highest piccolo note.
 */
const TUNING_TABLE = [
  [22, 29.14],
  [34, 58.27],
  [46, 116.54],
  [57, 220],
  [60, 261.63],
  [69, 440],
  [76, 659.26],
  [88, 1318.51],
  [96, 2093],
  [108, 4186.01],
] as const;

describe.each(TUNING_TABLE)('note %d of the tuning table, %d Hz', (midi, hertz) => {
  const samples = tone(midi, 1.2);
  const heard = heardHertz(listen(takeOf(samples), { lowestMidi: midi - 5, highestMidi: midi + 5 }), 0.4, 0.8);

  it('is heard as in the table', () => {
    // half of the table's last digit is 0.3 cents at the lowest note; 10 cents are just noticeable (Hill & Summers 2007)
    expect(Math.abs(centsOver(middle(heard), hertz))).toBeLessThan(1);
  });

  it('is heard as praat hears it', (context) => {
    needs(context, 'praat');
    const theirs = between(praatPitch(encodeWav(samples, RATE), hertz / 1.5, Math.min(hertz * 2, 5000)), 0.4, 0.8);
    expect(theirs.length).toBeGreaterThan(20);
    expect(Math.abs(centsOver(middle(heard), middle(theirs)))).toBeLessThan(1);
  });
});

describe('a whole étude of 102 notes with vibrato, in a room', () => {
  const part = demoPart();
  const heard = hearTake(part, { seed: 3, voice: 'flute', tuningCents: 14, vibrato: { rateHz: 5.5, depthCents: 12 } });
  const wav = encodeWav(heard.take.samples.subarray(), heard.take.sampleRateHz);
  const measured = measureTake(heard).notes;

  /** Cents of each note that lasts, by another reader: the median of its middle. */
  function theirCents(pitches: readonly HeardPitch[], delay: number): Map<number, number> {
    const long = [...heard.meant.values()].filter((n) => n.offsetSeconds - n.onsetSeconds > 0.25);
    return new Map(
      long.flatMap(({ index, playedMidi, onsetSeconds, offsetSeconds }) => {
        const inside = between(pitches, onsetSeconds + 0.08 - delay, offsetSeconds - 0.06 - delay);
        const cents = centsOver(middle(inside), 440 * 2 ** ((playedMidi - 69) / 12));
        return index === null || inside.length < 5 ? [] : [[index, cents] as const];
      }),
    );
  }

  function expectAgreement(theirs: ReadonlyMap<number, number>, medianBound: number): void {
    const apart = [...theirs].map(([index, cents]) => {
      const ours = measured[index]?.cents;
      return typeof ours === 'number' ? Math.abs(ours - cents) : Number.POSITIVE_INFINITY;
    });
    expect(apart.length).toBeGreaterThan(50);
    expect(middle(apart)).toBeLessThan(medianBound);
    expect(shareWithin(apart, 10)).toBeGreaterThan(0.95);
  }

  // 10 cents are just noticeable (Hill & Summers 2007); the vibrato leaves the readers' medians a few cents apart
  it('is in tune to the cents that praat measures, note by note', (context) => {
    needs(context, 'praat');
    expectAgreement(theirCents(praatPitch(wav, 150, 2000), 0), 2);
  });

  it('is in tune to the cents that aubio measures, note by note', (context) => {
    needs(context, 'aubiopitch');
    // aubio times a frame at its beginning: half a window at 22050 Hz
    expectAgreement(theirCents(aubioPitch(wav), -1024 / 22050), 3);
  });
});

describe.each(REAL_NOTES)('the second ear on a real note, $file', ({ file, midi, praat }) => {
  it('hears it where praat does, as it is and moved by 40 cents', async (context) => {
    needs(context, 'praat');
    const { samples, sampleRateHz } = decodeWav(readFileSync(join(notes, `${file}.wav`)));
    // Played back faster by a factor it is higher by 1200 · log2 of the factor, to the last sample.
    const fast = Math.round(sampleRateHz * 2 ** (40 / 1200));
    for (const rate of [sampleRateHz, fast]) {
      const seconds = samples.length / rate;
      const span = { onset: 0.3, offset: seconds - 0.15, midi };
      const [heard] = await hearPitches(samples, rate, [span]);
      const by = between(praatPitch(encodeWav(samples.subarray(), rate), 75, 4500), 0.35, seconds - 0.2);
      expect(Math.abs((heard as number) - centsOver(middle(by), 440 * 2 ** ((midi - 69) / 12)))).toBeLessThan(4);
      expect(Math.abs(centsOver(middle(by), praat) - centsOver(rate, sampleRateHz))).toBeLessThan(6);
    }
  });
});
