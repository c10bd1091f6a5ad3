import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { notMeasured } from '../../src/base/index.js';
import { measureTake } from '../../src/measure/index.js';
import type { PartNote } from '../../src/score/index.js';
import { smallPart } from '../demo/small-part.js';
import { type HandNote, type HandOptions, handContext, playEvenly } from '../helpers/hand-context.js';
import { demoPart, hearTake } from '../helpers/heard-take.js';

/** Sixteen quarters of a second; a breath is asked for after the fifth (0-based) and a caesura after the tenth. */
const sketch = (at: Record<number, Partial<PartNote>>) =>
  smallPart(Array.from({ length: 16 }, (_, i) => ({ midi: 60 + (i % 5), quarters: 1, ...at[i] })));
const PART = sketch({ 5: { breathAfter: 'breath' }, 10: { breathAfter: 'caesura' } });

type Change = (note: HandNote) => Partial<HandNote>;

function breaths(part: typeof PART, change: Change, options: HandOptions = {}) {
  const notes = playEvenly(part).map((note) => ({ ...note, ...change(note) }));
  return measureTake(handContext(part, notes, options)).breaths;
}

/** Everything after a note comes so much later. */
const waiting =
  (after: number, seconds: number): Change =>
  ({ index, onset, offset }) =>
    index > after ? { onset: onset + seconds, offset: offset + seconds } : {};

describe('the breaths asked for', () => {
  it('are each listed with their place, in order', () => {
    const found = breaths(PART, () => ({}));
    // the sixth quarter is the second of bar 2, the eleventh the third of bar 3
    expect(found).toMatchObject([
      { index: 5, bar: '2', beat: 2, pass: 1 },
      { index: 10, bar: '3', beat: 3, pass: 1 },
    ]);
    expect(breaths(sketch({}), () => ({}))).toEqual([]);
  });

  it('taken from the note before leave the silence and delay nothing', () => {
    const [breath, caesura] = breaths(PART, ({ index, onset }) => (index === 5 ? { offset: onset + 0.6 } : {}));
    expect(breath!.gapSeconds).toBeCloseTo(0.4, 9);
    expect(breath!.lateSeconds).toBeCloseTo(0, 9);
    expect(caesura!.gapSeconds).toBeCloseTo(0.1, 9);
  });

  it('that hold up the music are late by what it waits, early when the next note comes too soon', () => {
    const [breath, caesura] = breaths(PART, waiting(5, 0.35));
    // a tenth of a second is silent after every note
    expect(breath!.gapSeconds).toBeCloseTo(0.45, 9);
    expect(breath!.lateSeconds).toBeCloseTo(0.35, 9);
    expect(caesura!.lateSeconds).toBeCloseTo(0, 9);
    expect(breaths(PART, waiting(10, -0.08))[1]!.lateSeconds).toBeCloseTo(-0.08, 9);
  });

  it('that are not taken have no silence, never less than none', () => {
    const [breath] = breaths(PART, ({ index, onset }) => (index === 5 ? { offset: onset + 1.1 } : {}));
    expect(breath!.gapSeconds).toBe(0);
  });

  it('say nothing of time where a fermata leaves it open, but of the silence', () => {
    const why = notMeasured('fermata-leaves-open');
    for (const part of [
      sketch({ 5: { breathAfter: 'breath', fermata: true } }),
      sketch({ 5: { breathAfter: 'breath' }, 6: { heldRestBefore: true } }),
    ]) {
      const [breath] = breaths(part, waiting(5, 1.5));
      expect(breath!.lateSeconds).toEqual(why);
      expect(breath!.gapSeconds).toBeCloseTo(1.6, 9);
    }
  });

  it.each<[string, Change, HandOptions]>([
    ['the note before was left out', ({ index }) => (index === 5 ? { status: 'left-out' } : {}), {}],
    ['the note after was left out', ({ index }) => (index === 6 ? { status: 'left-out' } : {}), {}],
    ['nothing was heard', () => ({ status: 'left-out' }), {}],
    [
      'the player began again there',
      () => ({}),
      { alignment: { restarts: [{ stoppedAtIndex: 8, resumedAtIndex: 6, onsetSeconds: 6.5 }] } },
    ],
  ])('are not measured when %s', (_, change, options) => {
    const why = notMeasured('neighbours-not-heard');
    expect(breaths(PART, change, options)[0]).toMatchObject({ index: 5, gapSeconds: why, lateSeconds: why });
  });

  it('after the last note are listed, too, with nothing to measure', () => {
    const [last] = breaths(sketch({ 15: { breathAfter: 'breath' } }), () => ({}));
    expect(last).toMatchObject({ index: 15, gapSeconds: { notMeasured: expect.any(Object) } });
  });

  it('have a silence, but no lateness, where there is no pace to hold against', () => {
    const short = smallPart([
      { midi: 60, quarters: 1 },
      { midi: 62, quarters: 1, breathAfter: 'breath' },
      { midi: 64, quarters: 1 },
    ]);
    const [breath] = breaths(short, () => ({}));
    expect(breath!.gapSeconds).toBeCloseTo(0.1, 9);
    expect(breath!.lateSeconds).toEqual(notMeasured('tempo-unknown-here'));
  });

  it('obey their laws: a stretch stretches them, gain and another key leave them', () => {
    const seconds = fc.double({ min: -0.05, max: 0.8, noNaN: true });
    const stretch = fc.double({ min: 0.6, max: 2, noNaN: true });
    fc.assert(
      fc.property(seconds, stretch, fc.integer({ min: -12, max: 12 }), (wait, slower, by) => {
        const before = breaths(PART, waiting(5, wait));
        const after = breaths(
          PART,
          (note) => {
            const { onset = note.onset, offset = note.offset } = waiting(5, wait)(note);
            return { onset: onset * slower, offset: offset * slower, levelDb: note.levelDb + by };
          },
          { offsetSemitones: by },
        );
        after.forEach((breath, k) => {
          expect(breath.gapSeconds).toBeCloseTo(slower * (before[k]!.gapSeconds as number), 6);
          expect(breath.lateSeconds).toBeCloseTo(slower * (before[k]!.lateSeconds as number), 6);
        });
      }),
      { numRuns: 30 },
    );
  });
});

describe('the breaths of a performed take', () => {
  // Source: the gap and the delay the synthesiser was told to play.
  it('show one that holds up the music among those that do not', () => {
    const part = demoPart();
    const places = part.notes.filter((n) => n.breathAfter !== null && !n.fermata).map((n) => n.index);
    const after = places[1]!;
    const faults = [{ kind: 'breath', after, seconds: 0.35, delaySeconds: 0.4 } as const];
    const found = measureTake(hearTake(part, { roomSeconds: 0, faults })).breaths;
    expect(found.map((b) => b.index)).toEqual(part.notes.filter((n) => n.breathAfter !== null).map((n) => n.index));
    const late = found.filter((b) => typeof b.lateSeconds === 'number' && b.lateSeconds > 0.2);
    expect(late.map((b) => b.index)).toEqual([after]);
    expect(Math.abs((late[0]!.lateSeconds as number) - 0.4)).toBeLessThan(0.05);
  });
});
