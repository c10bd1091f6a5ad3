import { describe, expect, it } from 'vitest';
import { isMeasured } from '../../src/base/index.js';
import { type Measurements, measureTake } from '../../src/measure/index.js';
import type { Part } from '../../src/score/index.js';
import { dynamic, type NoteSketch, smallPart } from '../demo/small-part.js';
import { type HandNote, type HandOptions, handContext, playEvenly } from '../helpers/hand-context.js';

/**
 * How little is enough for a number, and what is too little: the last case that is not measured beside the first that is.
 *
 * Source: the limits are working values, typed here by hand.
 */
const quarters = (count: number, marks: Partial<Part> = {}, at: Record<number, Partial<NoteSketch>> = {}) =>
  smallPart(
    Array.from({ length: count }, (_, i) => ({ midi: 60 + ((7 * i) % 12), quarters: 1, ...at[i] })),
    marks,
  );
function measured(
  part: Part,
  change: (note: HandNote) => Partial<HandNote> = () => ({}),
  options: HandOptions = {},
): Measurements {
  return measureTake(
    handContext(
      part,
      playEvenly(part).map((note) => ({ ...note, ...change(note) })),
      options,
    ),
  );
}

describe('so little is enough', () => {
  it('for the tuning of a take: five notes', () => {
    expect([4, 5].map((count) => isMeasured(measured(quarters(count)).tuning))).toEqual([false, true]);
  });

  it('for its tempo: two bars', () => {
    expect([4, 8].map((count) => isMeasured(measured(quarters(count)).tempo))).toEqual([false, true]);
  });

  // With the first note of the next bar, two notes in a bar have three pairs of onsets, one note has one.
  it('for the tempo of a bar: three pairs of onsets', () => {
    const bars = (heard: readonly number[]) => {
      const change = ({ index }: HandNote): Partial<HandNote> =>
        index >= 4 && index < 8 && !heard.includes(index) ? { status: 'left-out', confidence: 1 } : {};
      const { tempo } = measured(quarters(16), change);
      return isMeasured(tempo) ? tempo.bars.map(({ bar }) => bar) : [];
    };
    expect(bars([4])).toEqual(['1', '3', '4']);
    expect(bars([4, 6])).toEqual(['1', '2', '3', '4']);
  });

  it('for the level under a mark: two notes', () => {
    const part = (first: number) =>
      quarters(12, { dynamics: [dynamic('p', 0, 0, first - 1), dynamic('f', first, first, 11)] });
    const told = (first: number) => measured(part(first)).levels.map(({ levelDb }) => isMeasured(levelDb));
    expect([told(1), told(2)]).toEqual([
      [false, true],
      [true, true],
    ]);
  });

  it('for the level of a note: 3 dB above the floor', () => {
    const told = (levelDb: number) =>
      isMeasured(
        measured(quarters(12), ({ index }) => (index === 5 ? { levelDb } : {}), { floorDb: -60 }).notes[5]!.levelDb,
      );
    expect([told(-57.5), told(-56.5)]).toEqual([false, true]);
  });

  // Of a note 70 % are looked at, of which 10 ms have to be left: 14.3 ms.
  it('for the level of a note: 14 ms', () => {
    const told = (seconds: number) =>
      isMeasured(
        measured(quarters(12), ({ index, onset }) => (index === 5 ? { offset: onset + seconds } : {})).notes[5]!
          .levelDb,
      );
    expect([told(0.0135), told(0.015)]).toEqual([false, true]);
  });
});

describe('a recording that ends in sound', () => {
  /** The last note is still there when the recording stops, its last 40 ms at so many decibels. */
  const ends = (levelDb: number, floorDb = -80): boolean => {
    const part = quarters(12);
    const context = handContext(part, playEvenly(part), { floorDb });
    const { power, levelHopSeconds: hop } = context.features;
    const end = Math.round(11.5 / hop);
    const cut = power.slice(0, end).fill(10 ** (-24 / 10), end - Math.round(1 / hop));
    cut.fill(10 ** (levelDb / 10), end - Math.round(0.04 / hop));
    return measureTake({ ...context, features: { ...context.features, power: cut } }).recording.endsInSound;
  };

  it('is within 6 dB of the half second before: below that the tone has been let go', () => {
    expect([ends(-24), ends(-29.8), ends(-30.2), ends(-80)]).toEqual([true, true, false, false]);
  });

  it('is 15 dB above the floor: below that it may be the room', () => {
    expect([ends(-24, -39.2), ends(-24, -38.8)]).toEqual([true, false]);
  });
});
