import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { notMeasured } from '../../src/base/index.js';
import { listen } from '../../src/features/index.js';
import { judgeTake } from '../../src/judge/index.js';
import { measureTake } from '../../src/measure/index.js';
import { steadyCents } from '../../src/measure/measures/steady-cents.js';
import { smallPart } from '../demo/small-part.js';
import { type HandNote, handContext, playEvenly } from '../helpers/hand-context.js';
import { join, RATE, silence, takeOf, tone } from '../helpers/tones.js';

const steps = (...parts: readonly (readonly [frames: number, cents: number])[]): number[] =>
  parts.flatMap(([frames, cents]) => Array.from({ length: frames }, () => cents));

describe('the steady part of a note', () => {
  it('is all of it where it holds one pitch', () => {
    expect(steadyCents(steps([40, 7]))).toBe(7);
    expect(steadyCents([30])).toBe(30);
  });

  // A flute's vibrato reaches about a quarter tone in all (common practice); 6 Hz over 0.5 s of frames of 5 ms.
  it('is all of it under vibrato, which turns about its pitch', () => {
    const vibrato = Array.from({ length: 100 }, (_, f) => 20 + 30 * Math.sin(2 * Math.PI * 6 * 0.005 * f));
    expect(Math.abs(steadyCents(vibrato)! - 20)).toBeLessThan(3);
  });

  it('leaves out a beginning or an end at another pitch', () => {
    expect(steadyCents(steps([8, -70], [60, 4]))).toBe(4);
    expect(steadyCents(steps([60, 4], [8, 75]))).toBe(4);
  });

  it('is nowhere where there are two pitches, whichever of them is longer', () => {
    expect(steadyCents(steps([30, 0], [30, 70]))).toBeNull();
    expect(steadyCents(steps([20, 0], [50, 70]))).toBeNull();
    expect(steadyCents(steps([50, -60], [20, 10]))).toBeNull();
  });

  it('moves with the pitch, and does not know whether time goes forward', () => {
    const frames = fc.array(fc.integer({ min: -79, max: 79 }), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(frames, fc.integer({ min: -100, max: 100 }), (cents, by) => {
        const is = steadyCents(cents);
        const moved = steadyCents(cents.map((c) => c + by));
        if (is === null) expect(moved).toBeNull();
        else expect(moved).toBeCloseTo(is + by, 6);
        if (is !== null) expect(is).toBeGreaterThanOrEqual(Math.min(...cents));
        if (is !== null) expect(is).toBeLessThanOrEqual(Math.max(...cents));
      }),
    );
  });
});

// The truth is what is synthesised: tones of known frequency (ISO 16), heard by the program's own listening.
describe('a note whose span holds two pitches', () => {
  const PART = smallPart([60, 64, 67, 65, 62, 69, 71, 72].map((midi) => ({ midi, quarters: 1 })));
  const EVEN = playEvenly(PART);
  /** The third note, 67, sounds from 2.5 to 3.4 s; `sound` is put there. */
  const judgedWith = (sound: Float32Array) => {
    const pieces = EVEN.flatMap((note: HandNote) => {
      const own = note.index === 2 ? sound : tone(note.playedMidi, 0.9);
      return [own, silence(1 - own.length / RATE)];
    });
    const take = takeOf(join(silence(0.5), ...pieces));
    const { alignment } = handContext(PART, EVEN);
    const measurements = measureTake({
      take,
      features: listen(take, { lowestMidi: 57, highestMidi: 76 }),
      part: PART,
      alignment,
    });
    const told = judgeTake({ part: PART, alignment, measurements }).findings;
    const note = measurements.notes[2]!;
    return { note, told: told.filter(({ kind }) => kind === 'note-out-of-tune') };
  };

  it('is called out of tune where it holds one, 45 cents away', () => {
    const { note, told } = judgedWith(tone(67.45, 0.9));
    expect(Math.abs((note.cents as number) - 45)).toBeLessThan(2);
    expect(told).toMatchObject([{ weight: 'fix', index: 2 }]);
  });

  it.each([
    [0.45, 67.7],
    [0.25, 67.65],
    [0.6, 66.35],
  ])('is not called out of tune: %d s of its own, then %d', (seconds, then) => {
    const { note, told } = judgedWith(join(tone(67, seconds), tone(then, 0.9 - seconds)));
    expect(note.cents).toEqual(notMeasured('note-unsteady'));
    expect(told).toEqual([]);
  });

  it('keeps its own pitch where the other one is a whole tone away', () => {
    const { note, told } = judgedWith(join(tone(67, 0.5), tone(69, 0.4)));
    expect(Math.abs(note.cents as number)).toBeLessThan(3);
    expect(told).toEqual([]);
  });
});
