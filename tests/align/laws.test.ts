import { describe, expect, it } from 'vitest';
import { performTake } from '../../src/demo/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import {
  demoPart,
  type HeardTake,
  hearSamples,
  hearTake,
  onsetErrors,
  PLAIN,
  wrongStatuses,
} from '../helpers/heard-take.js';
import { join, noise, RATE, silence, tone } from '../helpers/tones.js';

const TUNE: readonly NoteSketch[] = [60, 64, 62, 65, 67, 64, 69, 65, 71, 67, 72, 69, 65, 62, 64, 60].map((midi, i) => ({
  midi,
  quarters: i % 3 === 0 ? 1 : 0.5,
}));
const PART = smallPart(TUNE);
const PLAYED = performTake(PART, { ...PLAIN, sampleRateHz: RATE });
const AS_IT_IS = hearSamples(PART, PLAYED.samples, RATE).alignment;

describe('gain', () => {
  it.each([0.5, 0.05, 1.9])('of %d changes nothing in the alignment', (gain) => {
    const other = hearSamples(
      PART,
      PLAYED.samples.map((x) => gain * x),
      RATE,
    ).alignment;
    expect(other.notes.map((n) => [n.status, n.playedMidi])).toEqual(
      AS_IT_IS.notes.map((n) => [n.status, n.playedMidi]),
    );
    other.notes.forEach((note, i) => {
      // a level frame is 2 ms long
      expect(Math.abs(note.onsetSeconds! - AS_IT_IS.notes[i]!.onsetSeconds!)).toBeLessThan(0.003);
      expect(Math.abs(note.offsetSeconds! - AS_IT_IS.notes[i]!.offsetSeconds!)).toBeLessThan(0.003);
    });
    expect(other.added).toEqual([]);
    expect(other.tuningCents).toBeCloseTo(AS_IT_IS.tuningCents, 1);
  });
});

describe('time', () => {
  it.each([0.25, 0.7183])('of %d s put before the take moves every moment by as much', (seconds) => {
    // the background goes on from the take's own lead-in, so that there is no click
    const before = PLAYED.samples.slice(0, Math.round(seconds * RATE));
    const later = hearSamples(PART, join(before, PLAYED.samples), RATE).alignment;
    const shift = before.length / RATE;
    expect(later.notes.map((n) => n.status)).toEqual(AS_IT_IS.notes.map((n) => n.status));
    later.notes.forEach((note, i) => {
      // two frames of about 5.8 ms at most
      expect(Math.abs(note.onsetSeconds! - shift - AS_IT_IS.notes[i]!.onsetSeconds!)).toBeLessThan(0.012);
    });
  });

  it('is measured in seconds, whatever the rate of the file', () => {
    for (const sampleRateHz of [16000, 32000, 96000]) {
      const heard = hearTake(PART, { sampleRateHz });
      expect(wrongStatuses(heard)).toEqual([]);
      for (const error of onsetErrors(heard)) expect(error).toBeLessThan(0.04);
    }
  });
});

describe('transposing part and take together', () => {
  it('changes nothing', () => {
    for (const semitones of [-9, 7]) {
      const part = smallPart(TUNE.map((note) => ({ ...note, midi: note.midi + semitones })));
      const { alignment } = hearTake(part);
      expect(alignment.offsetSemitones).toBe(0);
      expect(alignment.notes.every((n) => n.status === 'as-written')).toBe(true);
      expect(alignment.notes.map((n) => n.playedMidi)).toEqual(TUNE.map((note) => note.midi + semitones));
    }
  });
});

describe('sound around the music', () => {
  const found = (heard: Pick<HeardTake, 'alignment'>, shift: number): number =>
    Math.max(
      ...heard.alignment.notes.map((n, i) => Math.abs(n.onsetSeconds! - shift - AS_IT_IS.notes[i]!.onsetSeconds!)),
    );

  it('a tuning note and a try of the first notes do not count', () => {
    const before = join(silence(0.5), tone(69, 2.5, 'odd-harmonics', 0.1), silence(1.2));
    const heard = hearSamples(PART, join(before, PLAYED.samples), RATE);
    expect(heard.alignment.notes.every((n) => n.status === 'as-written')).toBe(true);
    expect(heard.alignment.restarts).toEqual([]);
    expect(found(heard, before.length / RATE)).toBeLessThan(0.025);
  });

  it('a note blown after the end does not count', () => {
    const heard = hearSamples(PART, join(PLAYED.samples, silence(0.8), tone(55, 1.5, 'odd-harmonics', 0.1)), RATE);
    expect(heard.alignment.notes.every((n) => n.status === 'as-written')).toBe(true);
    expect(found(heard, 0)).toBeLessThan(0.025);
    expect(heard.alignment.notes.at(-1)!.offsetSeconds!).toBeLessThan(PLAYED.samples.length / RATE);
  });
});

describe('what is not the part', () => {
  const etude = demoPart();
  const nothingKnown = ({ alignment, part }: Pick<HeardTake, 'alignment' | 'part'>): void => {
    expect(alignment.share).toBe(0);
    expect(alignment.notes).toHaveLength(part.notes.length);
    expect(alignment.notes.every((n) => n.status === 'unclear' && n.onsetSeconds === undefined)).toBe(true);
    expect([alignment.added, alignment.restarts, alignment.skips]).toEqual([[], [], []]);
  };

  it('another piece is another piece', () => {
    // a chromatic study of even notes, an octave and a half wide
    const other = smallPart(Array.from({ length: 72 }, (_, i) => ({ midi: 60 + ((i * 5) % 19), quarters: 0.5 })));
    const { samples, sampleRateHz } = performTake(other, PLAIN);
    const heard = hearSamples(etude, samples, sampleRateHz);
    expect(heard.alignment.fit).toBe('other');
    nothingKnown(heard);
  });

  it('a long tone is not the étude', () => {
    const heard = hearSamples(etude, join(silence(1), tone(62, 20), silence(1)), RATE);
    expect(heard.alignment.fit).toBe('other');
    nothingKnown(heard);
  });

  it.each([
    ['digital silence', silence(8)],
    ['the noise of a room', noise(8, -60)],
    ['loud noise', noise(8, -15)],
    ['half a second of sound', join(silence(2), tone(62, 0.5), silence(2))],
    ['an empty file', new Float32Array(0)],
  ])('%s is nothing', (_what, samples) => {
    const heard = hearSamples(etude, samples, RATE);
    expect(heard.alignment.fit).toBe('nothing');
    nothingKnown(heard);
  });
});
