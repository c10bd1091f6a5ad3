import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type MarkOrderMeasure, measureTake } from '../../src/measure/index.js';
import type { Part } from '../../src/score/index.js';
import { dynamic, smallPart } from '../demo/small-part.js';
import { type HandNote, type HandOptions, handContext, playEvenly } from '../helpers/hand-context.js';
import { demoPart, hearSamples, hearTake } from '../helpers/heard-take.js';

type Change = (note: HandNote) => Partial<HandNote>;

/** Passages of eight quarters, each under its mark, all on one pitch. */
const passages = (marks: readonly string[]): Part =>
  smallPart(
    Array.from({ length: 8 * marks.length }, () => ({ midi: 60, quarters: 1 })),
    { dynamics: marks.map((mark, k) => dynamic(mark, 8 * k, 8 * k, 8 * k + 7)) },
  );

function markOrder(part: Part, change: Change, options: HandOptions = {}): MarkOrderMeasure {
  const notes = playEvenly(part).map((note) => ({ ...note, ...change(note) }));
  return measureTake(handContext(part, notes, { floorDb: -90, ...options })).markOrder;
}

/** Levels of eight notes around 0 whose median is 0: 1, 2, 3, 4 units above and below. */
const spread = (index: number): number => [-4, 4, -3, 3, -2, 2, -1, 1][index % 8]!;

const FOUR = passages(['f', 'p', 'mf', 'p']);
const PLAN = [-20, -34, -27, -32];
const planned: Change = ({ index }) => ({ levelDb: PLAN[Math.floor(index / 8)]! + 0.25 * spread(index) });

describe('the order of the marks', () => {
  it('is listed from soft to loud as printed, all passages under a mark together', () => {
    const { marks, reversed } = markOrder(FOUR, planned);
    expect(marks.map(({ mark, count }) => [mark, count])).toEqual([
      ['p', 16],
      ['mf', 8],
      ['f', 8],
    ]);
    // the two passages under p lie 2 dB apart with the same spread: their median is between them
    expect(marks[0]!.levelDb).toBeCloseTo(-33, 2);
    expect(marks[1]!.levelDb).toBeCloseTo(-27, 2);
    expect(marks[2]!.levelDb).toBeCloseTo(-20, 2);
    expect(reversed).toEqual([]);
  });

  it('is sure of each level as its notes agree', () => {
    // Kenney & Keeping 1962: the error of a median is 1.2533 σ / √n. Distances from the median in units of 0.25 dB are
    // 1, 1, 2, 2, 3, 3, 4, 4 with median 2.5; σ = 1.4826 × 0.625 = 0.92663; 1.96 × 1.2533 × 0.92663 / √8 = 0.80476
    const { marks } = markOrder(FOUR, planned);
    expect(marks[2]!.intervalDb[0]).toBeCloseTo(-20.805, 2);
    expect(marks[2]!.intervalDb[1]).toBeCloseTo(-19.195, 2);
  });

  it('finds the pairs that stand the wrong way round, neighbours or not, and by how much', () => {
    const levels = [-32, -20, -26, -20];
    const { reversed } = markOrder(FOUR, ({ index }) => ({
      levelDb: levels[Math.floor(index / 8)]! + 0.25 * spread(index),
    }));
    expect(reversed.map(({ softer, louder }) => [softer, louder])).toEqual([
      ['p', 'mf'],
      ['p', 'f'],
      ['mf', 'f'],
    ]);
    [6, 12, 6].forEach((byDb, k) => {
      expect(reversed[k]!.byDb).toBeCloseTo(byDb, 2);
    });
  });

  it('leaves pairs alone that may stand either way', () => {
    const part = passages(['p', 'f']);
    const louder = (by: number): Change => {
      return ({ index }) => ({ levelDb: (index < 8 ? -26 + by : -26) + spread(index) });
    };
    // notes 1 to 4 dB off: half of each interval is 4 × 0.80476 = 3.22 dB, together 6.44
    expect(markOrder(part, louder(6.3)).reversed).toEqual([]);
    expect(markOrder(part, louder(6.6)).reversed).toHaveLength(1);
    expect(markOrder(part, louder(0)).reversed).toEqual([]);
    expect(markOrder(part, () => ({})).reversed).toEqual([]);
  });

  it('is that of the player: what the instrument does by itself is taken out', () => {
    // p lies mostly where the instrument is 8 dB louder, f mostly where it is not; the player gives f 4 dB more
    const midis = [79, 79, 60, 79, 79, 60, 79, 79, 60, 60, 79, 60, 60, 79, 60, 60];
    const part = smallPart(
      midis.map((midi) => ({ midi, quarters: 1 })),
      { dynamics: [dynamic('p', 0, 0, 7), dynamic('f', 8, 8, 15)] },
    );
    const { marks, reversed } = markOrder(part, ({ index, playedMidi }) => ({
      levelDb: (index < 8 ? -34 : -30) + (playedMidi > 70 ? 8 : 0) + 0.1 * spread(index),
    }));
    expect(reversed).toEqual([]);
    expect(Math.abs(marks[1]!.levelDb - marks[0]!.levelDb - 4)).toBeLessThan(1.5);
  });

  it('has no level for a mark with fewer than six notes, none at all for sf and its like', () => {
    const heard = (count: number): Change => {
      return (note) => (note.index < 8 - count ? { status: 'left-out' } : planned(note));
    };
    expect(markOrder(FOUR, heard(6)).marks.map((m) => m.mark)).toEqual(['p', 'mf', 'f']);
    expect(markOrder(FOUR, heard(5)).marks.map((m) => m.mark)).toEqual(['p', 'mf']);
    expect(markOrder(FOUR, () => ({ status: 'left-out' }))).toEqual({ marks: [], reversed: [] });
    expect(markOrder({ ...FOUR, dynamics: [] }, planned)).toEqual({ marks: [], reversed: [] });
    expect(markOrder(passages(['sfz', 'n']), () => ({})).marks).toEqual([]);
    const graced = { ...FOUR, notes: FOUR.notes.map((n) => (n.index < 3 ? { ...n, grace: true } : n)) };
    expect(markOrder(graced, planned).marks.map((m) => m.mark)).toEqual(['p', 'mf']);
  });

  // Source: common practice: the printed marks from the softest to the loudest.
  it('knows all marks', () => {
    const marks = ['pppp', 'ppp', 'pp', 'p', 'mp', 'mf', 'f', 'ff', 'fff', 'ffff'];
    const backwards = passages(marks.toReversed());
    const { marks: found, reversed } = markOrder(backwards, ({ index }) => ({
      levelDb: -15 - 5 * Math.floor(index / 8),
    }));
    expect(found.map((m) => m.mark)).toEqual(marks);
    expect(reversed).toEqual([]);
  });

  it('obeys its laws: gain moves levels only, a stretch and another key nothing', () => {
    const plan = fc.array(fc.integer({ min: -45, max: -15 }), { minLength: 4, maxLength: 4 });
    const stretch = fc.double({ min: 0.6, max: 2, noNaN: true });
    fc.assert(
      fc.property(plan, fc.integer({ min: -12, max: 12 }), stretch, (levels, by, slower) => {
        const played: (note: HandNote) => { levelDb: number } = ({ index }) => ({
          levelDb: levels[Math.floor(index / 8)]! + 0.25 * spread(index),
        });
        const before = markOrder(FOUR, played);
        const after = markOrder(
          FOUR,
          (note) => ({
            levelDb: played(note).levelDb + by,
            onset: note.onset * slower,
            offset: note.offset * slower,
          }),
          { offsetSemitones: by, floorDb: -90 + by },
        );
        expect(after.reversed.map((r) => [r.softer, r.louder])).toEqual(
          before.reversed.map((r) => [r.softer, r.louder]),
        );
        after.marks.forEach((m, k) => {
          expect(m.levelDb - by).toBeCloseTo(before.marks[k]!.levelDb, 2);
        });
        // no pair and its opposite, and none that is not louder
        for (const { byDb } of after.reversed) expect(byDb).toBeGreaterThan(0);
      }),
      { numRuns: 30 },
    );
  });
});

describe('the order of the marks of performed takes', () => {
  const part = demoPart();
  const order = (contrast: number): MarkOrderMeasure =>
    measureTake(hearTake(part, { roomSeconds: 0, contrast })).markOrder;

  const good = order(1);

  // Source: the share of the contrasts the synthesiser was told to play; less than none turns them round.
  it('is kept by one that plays the marks, and lost by one that plays them the wrong way round', () => {
    expect(good.marks.length).toBeGreaterThan(1);
    const levels = good.marks.map((m) => m.levelDb);
    expect(levels).toEqual(levels.toSorted((a, b) => a - b));
    expect(good.reversed).toEqual([]);
    const turned = order(-0.8);
    const [softest, loudest] = [good.marks[0]!.mark, good.marks.at(-1)!.mark];
    const pair = turned.reversed.find((r) => r.softer === softest && r.louder === loudest);
    expect(pair!.byDb).toBeGreaterThan(3);
  });

  // Source: the law of gain: a passage turned up by 9 dB is 9 dB louder.
  it('shows one passage that is planted loud, and the others keep their level', () => {
    const heard = hearTake(part, { roomSeconds: 0 });
    const planted = part.dynamics.findIndex((d) => d.mark === good.marks[0]!.mark && d.toIndex - d.index >= 3);
    const { index, toIndex } = part.dynamics[planted]!;
    const rate = heard.take.sampleRateHz;
    const from = heard.meant.get(index)!.onsetSeconds * rate;
    const to = heard.meant.get(toIndex)!.offsetSeconds * rate;
    const samples = heard.take.samples.subarray().map((x, i) => (i >= from && i < to ? x * 10 ** (9 / 20) : x));
    const [before, after] = [heard, hearSamples(part, samples, rate)].map((take) => measureTake(take).levels);
    after!.forEach(({ levelDb }, k) => {
      const was = before![k]!.levelDb;
      if (typeof levelDb !== 'number' || typeof was !== 'number') throw new Error(`mark ${k} was not measured`);
      expect(Math.abs(levelDb - was - (k === planted ? 9 : 0))).toBeLessThan(0.5);
    });
  });
});
