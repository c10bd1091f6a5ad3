import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AccentMeasure, type MeasureContext, measureTake } from '../../src/measure/index.js';
import type { Part, PartNote } from '../../src/score/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { type HandNote, type HandOptions, handContext, playEvenly } from '../helpers/hand-context.js';

/** Eleven quarters of a second, the sixth with the mark in question; too few to know the instrument by itself. */
const AT = 5;
const partWith = (
  marked: Partial<PartNote>,
  marks: Partial<Part> = {},
  others: Record<number, Partial<NoteSketch>> = {},
) =>
  smallPart(
    Array.from({ length: 11 }, (_, i) => ({ midi: 60, quarters: 1, ...(i === AT ? marked : {}), ...others[i] })),
    marks,
  );
const ACCENTED = partWith({ articulations: ['accent'] });
const event = (mark: string): Part['dynamicEvents'] => [
  { mark, bar: '2', pass: 1, atQuarters: AT, index: AT } as Part['dynamicEvents'][number],
];

type Change = (note: HandNote) => Partial<HandNote>;

/** How the marked note goes: dB over −24 for its first tenth of a second, and for the rest. */
function played(
  part: Part,
  attackDb: number,
  restDb: number,
  change: Change = () => ({}),
  options: HandOptions = {},
): MeasureContext {
  const notes = playEvenly(part).map((note) => ({ ...note, ...change(note) }));
  const context = handContext(part, notes, options);
  const power = context.features.power.slice();
  const { onset, offset, levelDb, status } = notes[AT]!;
  const frame = (seconds: number) => Math.round(seconds / context.features.levelHopSeconds);
  if (status !== 'left-out') {
    power.fill(10 ** ((levelDb + restDb) / 10), frame(onset), frame(offset));
    power.fill(10 ** ((levelDb + attackDb) / 10), frame(onset), frame(Math.min(offset, onset + 0.1)));
  }
  return { ...context, features: { ...context.features, power } };
}

function accent(context: MeasureContext): AccentMeasure {
  const { accents } = measureTake(context);
  expect(accents).toHaveLength(1);
  return accents[0]!;
}

describe('an accent', () => {
  it('stands out by what its attack is louder, and falls by what it falls', () => {
    const found = accent(played(ACCENTED, 6, 2));
    expect(found).toMatchObject({ mark: 'accent', index: AT, bar: '2', pass: 1 });
    expect(found.overDb).toBeCloseTo(6, 3);
    expect(found.fallDb).toBeCloseTo(4, 3);
    expect(found.spreadDb).toBeCloseTo(0, 3);
  });

  it('that is not made stands out by nothing and does not fall; one that swells falls by less than nothing', () => {
    const flat = accent(played(ACCENTED, 0, 0));
    expect([flat.overDb, flat.fallDb]).toEqual([expect.closeTo(0, 3), expect.closeTo(0, 3)]);
    expect(accent(played(ACCENTED, -3, 0)).overDb).toBeCloseTo(-3, 3);
    expect(accent(played(ACCENTED, -3, 0)).fallDb).toBeCloseTo(-3, 3);
  });

  it('is held against the middle of three notes on each side, which tell how far they differ', () => {
    const around: Record<number, number> = { 2: -30, 3: -28, 4: -26, 6: -24, 7: -22, 8: -20 };
    const found = accent(played(ACCENTED, 10, 10, ({ index }) => ({ levelDb: around[index] ?? -24 })));
    // −14 against the median −25; quartiles of six (Hyndman & Fan 1996, definition 7): −27.5 and −22.5
    expect(found.overDb).toBeCloseTo(11, 3);
    expect(found.spreadDb).toBeCloseTo(5, 3);
  });

  it.each(['sf', 'sfz', 'fp', 'rf'])('may be a %s, which is named as printed, above a sign on the note', (mark) => {
    const part = partWith({ articulations: ['accent'] }, { dynamicEvents: event(mark) });
    const found = accent(played(part, 8, -4));
    expect(found.mark).toBe(mark);
    // fp: from 8 dB above to 4 below
    expect(found.fallDb).toBeCloseTo(12, 3);
  });

  it('may be a strong accent; other signs are none', () => {
    expect(accent(played(partWith({ articulations: ['staccato', 'strong-accent'] }), 5, 0)).mark).toBe('strong-accent');
    const signs = partWith({ articulations: ['staccato', 'tenuto', 'detached-legato', 'staccatissimo'] });
    expect(measureTake(played(signs, 5, 0)).accents).toEqual([]);
  });

  it('is not held against other accents', () => {
    const loud = { articulations: ['accent'] as const };
    const part = partWith({ articulations: ['accent'] }, {}, { 4: loud, 6: loud });
    const context = played(part, 6, 6, ({ index }) => (index === 4 || index === 6 ? { levelDb: -14 } : {}));
    expect(measureTake(context).accents.find((a) => a.index === AT)!.overDb).toBeCloseTo(6, 3);
  });

  it('does not tell a fall when the note is shorter than three tenths of a second', () => {
    const lasting = (seconds: number) =>
      accent(played(ACCENTED, 6, 0, ({ index, onset }) => (index === AT ? { offset: onset + seconds } : {})));
    expect(lasting(0.32).fallDb).toBeCloseTo(6, 3);
    expect(lasting(0.28)).not.toHaveProperty('fallDb');
    expect(lasting(0.28).overDb).toBeCloseTo(6, 3);
  });

  it('is not measured when it was not played, or fewer than three notes around it were', () => {
    const without = (...gone: readonly number[]): readonly AccentMeasure[] =>
      measureTake(played(ACCENTED, 6, 0, ({ index }) => (gone.includes(index) ? { status: 'left-out' } : {}))).accents;
    expect(without(AT)).toEqual([]);
    expect(without(2, 3, 4)).toHaveLength(1);
    expect(without(2, 3, 4, 6)).toEqual([]);
    const graces = partWith(
      { articulations: ['accent'] },
      {},
      { 3: { grace: true }, 4: { grace: true }, 6: { grace: true }, 7: { grace: true } },
    );
    expect(measureTake(played(graces, 6, 0)).accents).toEqual([]);
  });

  it('is left unmeasured where the file is digital silence', () => {
    const context = played(ACCENTED, 6, 0);
    const nothing = { ...context.features, power: new Float32Array(context.features.power.length) };
    expect(measureTake({ ...context, features: nothing }).accents).toEqual([]);
  });

  it('obeys its laws: gain, a stretch and another key change nothing', () => {
    const db = fc.integer({ min: -6, max: 12 });
    const stretch = fc.double({ min: 0.6, max: 2, noNaN: true });
    fc.assert(
      fc.property(db, db, fc.integer({ min: -12, max: 12 }), stretch, (attackDb, restDb, by, slower) => {
        const found = accent(
          played(
            ACCENTED,
            attackDb,
            restDb,
            ({ onset, offset, levelDb }) => ({ onset: onset * slower, offset: offset * slower, levelDb: levelDb + by }),
            { floorDb: -80 + by, offsetSemitones: by },
          ),
        );
        expect(found.overDb).toBeCloseTo(attackDb, 2);
        expect(found.fallDb).toBeCloseTo(attackDb - restDb, 2);
      }),
      { numRuns: 30 },
    );
  });
});
