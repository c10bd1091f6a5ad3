import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureTake } from '../../src/measure/index.js';
import { crescendo, dynamic, smallPart } from '../demo/small-part.js';
import { type HandNote, handContext, playEvenly } from '../helpers/hand-context.js';

const PART = smallPart(
  Array.from({ length: 24 }, (_, i) => ({ midi: 60 + ((7 * i) % 12), quarters: 1, fermata: i === 20 })),
  {
    dynamics: [dynamic('p', 0, 0, 7), dynamic('f', 16, 16, 23)],
    hairpins: [crescendo(8, 16, 8, 15)],
  },
);

/** Playing with some scatter in everything, the same in one run of a law. */
const playing = fc
  .array(
    fc.record({
      late: fc.integer({ min: -30, max: 30 }),
      db: fc.integer({ min: -40, max: 40 }),
      cents: fc.integer({ min: -30, max: 30 }),
    }),
    {
      minLength: 24,
      maxLength: 24,
    },
  )
  .map((scatter) =>
    playEvenly(PART).map((note, i): HandNote => {
      const { late, db, cents } = scatter[i]!;
      const plan = i < 8 ? -34 : i < 16 ? -34 + i : -22;
      return { ...note, onset: note.onset + late / 1000, levelDb: plan + db / 10, cents };
    }),
  );

/** All numbers of a result, whatever measures there are, with a path to each; lists of cautions and names left out. */
function numbersIn(value: unknown, path = ''): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(inner, `${path}.${key}`));
}

describe('laws of measuring', () => {
  it('gain moves levels by its decibels and nothing else', () => {
    fc.assert(
      fc.property(playing, fc.integer({ min: -20, max: 15 }), (notes, gainDb) => {
        const before = numbersIn(measureTake(handContext(PART, notes, { floorDb: -60 })));
        const louder = notes.map((note) => ({ ...note, levelDb: note.levelDb + gainDb }));
        const after = new Map(numbersIn(measureTake(handContext(PART, louder, { floorDb: -60 + gainDb }))));
        expect(after.size).toBe(before.length);
        for (const [path, value] of before) {
          const moves = /levelDb$|markOrder\.marks\.\d+\.intervalDb/.test(path) ? gainDb : 0;
          expect(Math.abs(after.get(path)! - value - moves), path).toBeLessThan(5e-3);
        }
      }),
      { numRuns: 25 },
    );
  });

  it('a uniform stretch leaves levels, ratios and shares and divides the tempo', () => {
    fc.assert(
      fc.property(playing, fc.double({ min: 0.7, max: 2, noNaN: true }), (notes, stretch) => {
        const slower = notes.map((note) => ({ ...note, onset: note.onset * stretch, offset: note.offset * stretch }));
        const [before, after] = [notes, slower].map((played) => measureTake(handContext(PART, played)));
        const same = (a: unknown, b: unknown, tolerance: number): void => {
          const [x, y] = [numbersIn(a), numbersIn(b)];
          expect(x.length).toBe(y.length);
          for (const [i, [path, value]] of x.entries())
            expect(Math.abs(value - y[i]![1]), path).toBeLessThan(tolerance);
        };
        // frames of 2 and 5 ms do not stretch with the notes
        same(before!.levels, after!.levels, 0.01);
        same(before!.contrasts, after!.contrasts, 0.02);
        same(
          before!.fermatas.map((f) => f.ratio),
          after!.fermatas.map((f) => f.ratio),
          1e-6,
        );
        same(
          before!.hairpins.map((h) => [h.riseDb, h.slopeDbPerBar]),
          after!.hairpins.map((h) => [h.riseDb, h.slopeDbPerBar]),
          0.02,
        );
        same(
          before!.notes.map((n) => n.cents),
          after!.notes.map((n) => n.cents),
          0.02,
        );
        const bpm = [before!, after!].map((m) => (m.tempo as { playedQuarterBpm: number }).playedQuarterBpm);
        expect(bpm[0]! / bpm[1]!).toBeCloseTo(stretch, 6);
      }),
      { numRuns: 25 },
    );
  });

  it('a retuned take has the same deviations from its own tuning', () => {
    fc.assert(
      fc.property(playing, fc.integer({ min: -25, max: 25 }), (notes, shift) => {
        const before = measureTake(handContext(PART, notes)).notes;
        const after = measureTake(
          handContext(
            PART,
            notes.map((note) => ({ ...note, cents: note.cents + shift })),
          ),
        ).notes;
        after.forEach((note, i) => {
          expect(note.centsFromOwnTuning).toBeCloseTo(before[i]!.centsFromOwnTuning as number, 2);
        });
      }),
      { numRuns: 25 },
    );
  });

  it('the result is as long as the part and in its order', () => {
    const result = measureTake(handContext(PART, playEvenly(PART)));
    expect(result.notes.map((note) => note.index)).toEqual(PART.notes.map((note) => note.index));
    expect(result.levels).toHaveLength(PART.dynamics.length);
    expect(result.hairpins).toHaveLength(PART.hairpins.length);
    expect(result.fermatas.map((f) => f.index)).toEqual([20]);
  });

  it('a take of which nothing was heard has a reason everywhere and no NaN', () => {
    const silent = playEvenly(PART).map((note) => ({ ...note, status: 'left-out' as const }));
    const result = measureTake(handContext(PART, silent));
    for (const [path, value] of numbersIn(result)) expect(Number.isFinite(value), path).toBe(true);
    expect(result.tuning).toHaveProperty('notMeasured');
    expect(result.tempo).toHaveProperty('notMeasured');
    for (const note of result.notes) expect(note.levelDb).toHaveProperty('notMeasured');
    for (const hairpin of result.hairpins) expect(hairpin.riseDb).toHaveProperty('notMeasured');
    for (const contrast of result.contrasts) expect(contrast.differenceDb).toHaveProperty('notMeasured');
  });
});
