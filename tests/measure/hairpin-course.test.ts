import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type HairpinCourse, type HairpinMeasure, measureTake } from '../../src/measure/index.js';
import { crescendo, dynamic, smallPart } from '../demo/small-part.js';
import { handContext, playEvenly } from '../helpers/hand-context.js';

/** Eighteen plain notes under p, from which the instrument is known, then a hairpin over the rest, a second a note. */
const FLAT = 18;

function hairpin(
  levels: readonly number[],
  kind: HairpinMeasure['kind'] = 'crescendo',
  {
    midi = (_: number): number => 60,
    flat = FLAT,
    ownDb = (_: number): number => 0,
    stretch = 1,
    gainDb = 0,
    by = 0,
  } = {},
): HairpinMeasure {
  const count = flat + levels.length;
  const last = count - 1;
  const part = smallPart(
    Array.from({ length: count }, (_, i) => ({ midi: midi(i), quarters: 1 })),
    { dynamics: [dynamic('p', 0, 0, flat - 1)], hairpins: [{ ...crescendo(flat, count, flat, last), kind }] },
  );
  const notes = playEvenly(part, stretch).map((note) => ({
    ...note,
    levelDb: (levels[note.index - flat] ?? -40) + ownDb(note.playedMidi) + gainDb,
  }));
  return measureTake(handContext(part, notes, { floorDb: -90 + gainDb, offsetSemitones: by })).hairpins[0]!;
}

function courseOf(...args: Parameters<typeof hairpin>): HairpinCourse {
  const { course } = hairpin(...args);
  expect(course).toBeDefined();
  return course!;
}

const steps = (count: number, db: (i: number) => number): number[] => Array.from({ length: count }, (_, i) => db(i));

/**
 * Where a crescendo happens. All expected values are worked out by hand from the definition: medians of three
 * neighbouring notes in turn, from the first of them to the last.
 */
describe('the course of a crescendo', () => {
  it.each([8, 9, 12, 16])('of %d even steps is half done halfway, ends at its loudest and never turns', (count) => {
    const course = courseOf(steps(count, (i) => -36 + 1.5 * i));
    expect(course.halfwayShare).toBeCloseTo(0.5, 3);
    expect(course.peakAt).toBe(1);
    expect(course.turnedBackDb).toBe(0);
    expect(course.steadiness).toBe(1);
  });

  it('that comes late has hardly begun halfway', () => {
    const course = courseOf([-36, -36, -36, -36, -36, -36, -36, -36, -30, -24, -18, -18]);
    expect(course.halfwayShare).toBeCloseTo(0, 3);
    expect(course.peakAt).toBe(1);
  });

  it('that is given away at once is over halfway, and its loudest moment is early', () => {
    const course = courseOf([-36, -36, -36, ...steps(9, () => -20)]);
    expect(course.halfwayShare).toBeCloseTo(1, 3);
    // ten windows of three: the third is the first with two loud notes in it, two of nine steps on
    expect(course.peakAt).toBeCloseTo(2 / 9, 6);
    expect(course.turnedBackDb).toBeCloseTo(0, 3);
  });

  it('that sinks again before its end turns back', () => {
    // up by 2 dB a note to −20, down by 2 again: the medians reach −22 in the middle and end at −32
    const course = courseOf([-36, -34, -32, -30, -28, -26, -24, -22, -20, -22, -24, -26, -28, -30, -32, -34]);
    expect(course.turnedBackDb).toBeCloseTo(10, 3);
    // windows 7 (−24, −22, −20 → −22), 8 (−22, −20, −22 → −22) of 14: the first of the loudest
    expect(course.peakAt).toBeCloseTo(6 / 13, 6);
  });

  it('is not moved by one note that sticks out, but for its order', () => {
    const even = steps(12, (i) => -36 + 2 * i);
    const odd = courseOf(even.map((db, i) => (i === 6 ? -10 : db)));
    expect(Math.abs(odd.halfwayShare - 0.5)).toBeLessThan(0.06);
    expect(odd.turnedBackDb).toBeCloseTo(0, 3);
    // Kendall 1938: the note stands the wrong way round with five later ones, 10 of the 66 pairs taken off
    expect(odd.steadiness).toBeCloseTo(1 - (2 * 5) / 66, 6);
  });

  it('of a diminuendo is the mirror of that of a crescendo', () => {
    const levels = [-36, -35, -35.5, -33, -30, -31, -28, -24, -23, -20, -21];
    const up = courseOf(levels);
    const down = courseOf(
      levels.map((db) => -50 - db),
      'diminuendo',
    );
    expect(down.halfwayShare).toBeCloseTo(up.halfwayShare, 3);
    expect(down.peakAt).toBeCloseTo(up.peakAt, 9);
    expect(down.turnedBackDb).toBeCloseTo(up.turnedBackDb, 3);
    expect(down.steadiness).toBe(up.steadiness);
  });

  it('is that of the player: what the instrument does by itself is taken out', () => {
    const registers = { midi: (i: number) => (i % 2 === 0 ? 60 : 79), ownDb: (midi: number) => (midi > 70 ? 5 : 0) };
    const course = courseOf(
      steps(12, (i) => -36 + 2 * i),
      'crescendo',
      registers,
    );
    expect(course.steadiness).toBe(1);
    expect(Math.abs(course.halfwayShare - 0.5)).toBeLessThan(0.06);
  });

  it('is not told from fewer than eight notes', () => {
    expect(hairpin(steps(8, (i) => -36 + 2 * i))).toHaveProperty('course');
    const seven = hairpin(steps(7, (i) => -36 + 2 * i));
    expect(seven.riseDb).toBeCloseTo(12, 2);
    expect(seven).not.toHaveProperty('course');
  });

  it('is not told where hardly anything changes, or it goes the other way', () => {
    // from the second of eleven notes to the tenth are eight steps
    expect(hairpin(steps(11, (i) => -36 + 0.37 * i))).not.toHaveProperty('course');
    expect(hairpin(steps(11, (i) => -36 + 0.38 * i))).toHaveProperty('course');
    expect(hairpin(steps(11, (i) => -20 - 2 * i))).not.toHaveProperty('course');
    expect(hairpin(steps(11, () => -30))).not.toHaveProperty('course');
  });

  it('is not told when the instrument is not known from enough notes', () => {
    const few = hairpin(
      steps(10, (i) => -36 + 2 * i),
      'crescendo',
      { flat: 6 },
    );
    expect(few.riseDb).toBeCloseTo(18, 2);
    expect(few).not.toHaveProperty('course');
  });
});

/** Exchanges of neighbours that sort a list: Kendall's distance from the rising order. */
function exchanges(values: readonly number[]): number {
  const list = [...values];
  let count = 0;
  for (let pass = 0; pass < list.length; pass++) {
    for (let i = 0; i + 1 < list.length; i++) {
      if (list[i]! <= list[i + 1]!) continue;
      [list[i], list[i + 1]] = [list[i + 1]!, list[i]!];
      count++;
    }
  }
  return count;
}

describe('laws of the course', () => {
  const ranks = fc
    .array(fc.integer(), { minLength: 10, maxLength: 10 })
    .map((keys) => keys.map((key, i) => [key, i] as const).sort((a, b) => a[0] - b[0] || a[1] - b[1]))
    .map((pairs) => pairs.map(([, i]) => i));
  // the loudest three at the end, so that there is a rise to speak of
  const rising = ranks.map((order) => [...order.map((rank) => -40 + 2 * rank), -16, -15, -14]);

  it('steadiness is 1 less twice the share of exchanges that put the notes in order (Kendall 1938)', () => {
    fc.assert(
      fc.property(rising, (levels) => {
        const pairs = (levels.length * (levels.length - 1)) / 2;
        expect(courseOf(levels).steadiness).toBeCloseTo(1 - (2 * exchanges(levels)) / pairs, 9);
      }),
      { numRuns: 40 },
    );
  });

  it('gain, a uniform stretch and another key change nothing', () => {
    const stretch = fc.double({ min: 0.5, max: 2, noNaN: true });
    fc.assert(
      fc.property(rising, stretch, fc.integer({ min: -12, max: 12 }), (levels, slower, by) => {
        const before = courseOf(levels);
        const after = courseOf(levels, 'crescendo', { stretch: slower, gainDb: by, by });
        for (const key of ['halfwayShare', 'peakAt', 'turnedBackDb', 'steadiness'] as const) {
          expect(Math.abs(after[key] - before[key]), key).toBeLessThan(1e-3);
        }
        expect(before.halfwayShare).toBeGreaterThanOrEqual(0);
        expect(before.halfwayShare).toBeLessThanOrEqual(1);
        expect(before.turnedBackDb).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 40 },
    );
  });
});
