import { describe, expect, it } from 'vitest';
import { type Brief, defaultBrief } from '../../src/brief/index.js';
import { type CriterionLine, judgeTake } from '../../src/judge/index.js';
import { measureTake } from '../../src/measure/index.js';
import { dynamic, smallPart } from '../demo/small-part.js';
import { type HandNote, handContext, playEvenly } from '../helpers/hand-context.js';

const PART = smallPart(
  Array.from({ length: 24 }, (_, i) => ({ midi: 60 + ((7 * i) % 12), quarters: 1 })),
  { dynamics: [dynamic('p', 0, 0, 11), dynamic('f', 12, 12, 23)] },
);

function lines(
  change: (note: HandNote) => Partial<HandNote>,
  criteria: Partial<Brief['criteria']> = {},
): CriterionLine[] {
  const context = handContext(
    PART,
    playEvenly(PART).map((note) => ({ ...note, levelDb: note.index < 12 ? -34 : -22, ...change(note) })),
  );
  const usual = defaultBrief(PART);
  const brief = { ...usual, criteria: { ...usual.criteria, ...criteria } };
  const { part, alignment } = context;
  return [...judgeTake({ part, alignment, measurements: measureTake(context), brief }).criteria];
}

const of = (all: readonly CriterionLine[], name: CriterionLine['criterion']) => all.find((l) => l.criterion === name)!;

// The formula is the definition printed on the page: points possible × places as asked for ÷ places measured.
describe('points by a brief', () => {
  it('are all of them for what is as asked for', () => {
    const all = lines(() => ({}), { notes: { judged: true, points: 12 } });
    expect(of(all, 'notes')).toMatchObject({ of: 24, met: 24, points: { possible: 12, given: 12 } });
    expect(of(all, 'dynamics')).toMatchObject({ of: 1, met: 1, points: { possible: 1, given: 1 } });
    expect(of(all, 'continuity').points).toEqual({ possible: 1, given: 1 });
  });

  it('are fewer by the share that is surely to be mended: 3 of 24 notes cost an eighth', () => {
    const wrong = new Set([4, 9, 17]);
    const all = lines(
      (note) => (wrong.has(note.index) ? { status: 'other-pitch', playedMidi: note.playedMidi + 3 } : {}),
      { notes: { judged: true, points: 20 } },
    );
    expect(of(all, 'notes')).toMatchObject({ of: 24, met: 21, points: { possible: 20, given: 17.5 } });
  });

  it('are no part of the sound until a brief gives it some', () => {
    expect(
      of(
        lines(() => ({})),
        'sound',
      ).points,
    ).toBeUndefined();
    expect(
      of(
        lines(() => ({})),
        'sound',
      ).judged,
    ).toBe(true);
    const given = of(
      lines(() => ({}), { sound: { judged: true, points: 6 } }),
      'sound',
    );
    expect(given).toMatchObject({ of: 24, met: 24, points: { possible: 6, given: 6 } });
  });

  it('cost nothing for what is only to be watched', () => {
    const all = lines((note) => (note.index === 9 ? { status: 'other-pitch', playedMidi: 64, confidence: 0.2 } : {}));
    expect(of(all, 'notes').watch).toBe(1);
    expect(of(all, 'notes').points).toEqual({ possible: 1, given: 1 });
  });

  it('are lost for a contrast that is not there', () => {
    const flat = lines(() => ({ levelDb: -28 }), { dynamics: { judged: true, points: 8 } });
    expect(of(flat, 'dynamics')).toMatchObject({ of: 1, met: 0, points: { possible: 8, given: 0 } });
  });

  it('are not given where nothing was measured, or the brief leaves it out', () => {
    const all = lines(() => ({}), { intonation: { judged: false, points: 5 } });
    expect(of(all, 'intonation').points).toEqual({ possible: 5, given: null });
    expect(of(all, 'breath')).toMatchObject({ of: 0, points: { possible: 1, given: null } });
  });
});

describe('without a brief', () => {
  it('there are no points, but places are counted', () => {
    const context = handContext(PART, playEvenly(PART));
    const { criteria } = judgeTake({ ...context, measurements: measureTake(context) });
    expect(criteria.every((line) => line.points === undefined)).toBe(true);
    expect(of(criteria, 'notes')).toMatchObject({ of: 24, met: 24 });
  });
});
