import { describe, expect, it } from 'vitest';
import { type PanelMark, sectionRow, toStanding, toTakeResult } from '../../src/result/index.js';
import type { StandingRow } from '../../src/result/standing/to-standing.js';
import { resultOf, sampleReview } from '../helpers/sample-review.js';

/**
 * The table for a director and the document of a take, from rows put together by hand: sums, chairs and marks of a panel.
 *
 * Source: definition; standard deviation by n − 1.
 */
const plain = sectionRow('plain', resultOf(sampleReview({ findings: [] })));
interface Own {
  readonly error?: number;
  readonly outcome?: string;
  readonly ending?: 'whole' | 'broken-off' | 'cut-off';
  readonly player?: string | null;
  readonly file?: string;
}
/** A take with points for notes, and where it is said for rhythm. */
function row(name: string, notes: number | null, own: Own = {}, rhythm?: number | null): StandingRow {
  const { error = 0.1, outcome = 'reviewed', ending = 'whole', player = name.toUpperCase(), file = 'a.xml' } = own;
  const take = { ...plain.take, name, file: `${name}.wav`, player, outcome, played: { played: 1, of: 1, ending } };
  const criteria = [{ criterion: 'notes', given: notes, possible: 10 }];
  if (rhythm !== undefined) criteria.push({ criterion: 'rhythm', given: rhythm, possible: 20 });
  return { row: { ...plain, score: { ...plain.score, file }, take }, criteria, error } as unknown as StandingRow;
}
const mark = (take: string, judge: string, points: number): PanelMark => ({ take, judge, criterion: 'notes', points });
const tool = { name: 't', version: '1' };
const table = (rows: readonly StandingRow[], marks: readonly PanelMark[] = [], chairs: number | null = null) =>
  toStanding({ tool, rows, marks, chairs, language: 'en' });
const group = (...given: Parameters<typeof table>) => table(...given).groups[0]!;

describe('points in the table', () => {
  it('are summed over what could be measured', () => {
    const told = (one: StandingRow) =>
      group([one]).takes.map(({ given, possible, error }) => [given, possible, error])[0];
    expect(told(row('a', 7, {}, 12))).toEqual([19, 30, 0.1]);
    expect(told(row('a', 7, {}, null))).toEqual([7, 10, 0.1]);
    expect(told(row('a', null, {}, null))).toEqual([null, 30, null]);
    expect(told(row('a', 7, { ending: 'cut-off' }))).toEqual([null, 10, null]);
    expect(told(row('a', 7, { ending: 'broken-off' }))).toEqual([7, 10, 0.1]);
    expect(told(row('a', 7, { outcome: 'too-poor' }))).toEqual([null, 10, null]);
  });

  it('put the larger share first, equals by name, and those without points last', () => {
    const order = group([row('d', null), row('c', 5), row('b', 5), row('a', 5, {}, 20), row('e', 0)]).takes;
    expect(order.map(({ name }) => name)).toEqual(['a', 'b', 'c', 'e', 'd']);
    expect(order.at(-1)).toMatchObject({ place: null, chair: null, partsWays: false });
  });

  it('are told of the criteria that have some, once for a score', () => {
    const two = table([row('a', 5), row('b', 5, {}, 3), row('c', 5, { file: 'b.xml' })]);
    expect(two.groups.map(({ score, criteria }) => [score, criteria])).toEqual([
      [
        'a.xml',
        [
          { criterion: 'notes', possible: 10 },
          { criterion: 'rhythm', possible: 20 },
        ],
      ],
      ['b.xml', [{ criterion: 'notes', possible: 10 }]],
    ]);
  });
});

describe('chairs', () => {
  it('are sure, to be listened to again, or not for a take', () => {
    // 1.96 · √2 · 0.1 of ten points are 0.28: b and c share the second and third place
    const rows = [row('a', 9), row('b', 6), row('c', 5.8), row('d', 1), row('e', null)];
    const seats = (chairs: number) => group(rows, [], chairs).takes.map(({ chair }) => chair);
    expect(seats(1)).toEqual(['sure', 'no', 'no', 'no', 'no']);
    expect(seats(2)).toEqual(['sure', 'listen-again', 'listen-again', 'no', 'no']);
    expect(seats(3)).toEqual(['sure', 'sure', 'sure', 'no', 'no']);
    expect(group(rows).takes.map(({ chair }) => chair)).toEqual([null, null, null, null, null]);
  });
});

describe('the marks of a panel', () => {
  it('are added up for each judge, by the name of the take, of its file or of the player', () => {
    const marks = [mark('a', 'Cole', 3), mark('a.wav', 'Berg', 4), mark('A', 'Berg', 5)];
    const [take] = group([row('a', 5)], marks).takes;
    expect(take!.panel).toMatchObject({
      judges: [
        { judge: 'Berg', points: 9 },
        { judge: 'Cole', points: 3 },
      ],
      ...{ mean: 6, place: { best: 1, worst: 1 }, measuredPlace: { best: 1, worst: 1 } },
    });
    // deviations of 3 on both sides: √(18 ÷ 1)
    expect(take!.panel!.spread).toBeCloseTo(Math.sqrt(18), 1);
    expect(group([row('a', 5)], [mark('a', 'Berg', 4)]).takes[0]!.panel!.spread).toBeNull();
    expect(group([row('a', 5)], []).takes[0]!.panel).toBeNull();
  });

  it('of takes that nobody knows are named once', () => {
    expect(table([row('a', 5)], [mark('x', 'Berg', 1), mark('x', 'Cole', 1), mark('A', 'Berg', 1)]).unknown).toEqual([
      'x',
    ]);
  });

  it('part ways with the measures where the places cannot be the same', () => {
    const apart = (a: number, b: number, error = 0.1) =>
      group([row('a', 9, { error }), row('b', 3, { error })], [mark('a', 'Berg', a), mark('b', 'Berg', b)]).takes.map(
        ({ partsWays }) => partsWays,
      );
    expect([apart(8, 2), apart(2, 8), apart(2, 8, 9)]).toEqual([
      [false, false],
      [true, true],
      [false, false],
    ]);
  });

  it('agree by the takes that all judges have marked', () => {
    const rows = [row('a', 9), row('b', 6), row('c', 3)];
    const all = [
      ...['a', 'b', 'c'].map((name, i) => mark(name, 'Berg', i)),
      ...['a', 'b', 'c'].map((name, i) => mark(name, 'Cole', i)),
    ];
    expect(group(rows, all).agreement).toBe(1);
    expect(group(rows, all.slice(0, 5)).agreement).toBe(1);
    expect(group(rows, all.slice(0, 4)).agreement).toBeNull();
  });

  it('have places of their own among takes without points', () => {
    const takes = group([row('a', 9), row('b', null)], [mark('a', 'Berg', 2), mark('b', 'Berg', 5)]).takes;
    expect(takes.map(({ panel }) => [panel!.place.best, panel!.measuredPlace])).toEqual([
      [2, { best: 1, worst: 1 }],
      [1, null],
    ]);
  });
});

describe('the document of a take', () => {
  const sample = sampleReview({ findings: [] });

  it('names the instrument where it is known, and hides the recording where nobody may be known', () => {
    const take = (more: object) => toTakeResult({ ...sample, ...more }).take;
    expect(take({ instrument: 'oboe' }).instrument).toBe('oboe');
    expect(['instrument' in take({}), 'instrument' in take({ instrument: null })]).toEqual([false, false]);
    expect(take({ blind: true })).toMatchObject({ blind: true, sha256: '' });
    expect('blind' in take({ blind: false })).toBe(false);
    expect(take({}).sha256).toBe(sample.sha256);
  });

  it('has no note that was not looked for, and says what was played where that is known', () => {
    const played = { played: 3, of: 24, stretches: [], restarts: 0, ending: 'broken-off' as const };
    expect(toTakeResult({ ...sample, judgement: { ...sample.judgement, played } }).played).toEqual(played);
    const { played: _, ...judgement } = sample.judgement;
    expect('played' in toTakeResult({ ...sample, judgement })).toBe(false);
  });
});
