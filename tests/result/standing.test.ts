import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/base/index.js';
import { readMarks } from '../../src/batch/standing/read-marks.js';
import { drawPanelSheet, drawStanding } from '../../src/report/index.js';
import { type PanelMark, standingCsv, standingRow, type TakeResult, toStanding } from '../../src/result/index.js';
import { kendallW, ranksOf } from '../../src/result/standing/kendall-w.js';
import { placesOf } from '../../src/result/standing/places.js';
import { pointsError } from '../../src/result/standing/points-error.js';
import { inspectPdf } from '../helpers/pdf-tools.js';
import { resultOf, sampleReview } from '../helpers/sample-review.js';

describe('Kendall’s W', () => {
  // By hand: ranks 1 2½ 2½ 4, 1½ 1½ 3 4, 2 1 3 4; sums 4½ 5 8½ 12, their squares 261½; T = 6 + 6.
  // (12 · 261½ − 3 · 9 · 4 · 25) ÷ (9 · 4 · 15 − 3 · 12) = 438 ÷ 504. Source: Siegel & Castellan 1988, 9.5.
  it('is corrected for ties', () => {
    const marks = [
      [10, 8, 8, 5],
      [9, 9, 6, 4],
      [7, 8, 6, 5],
    ];
    expect(marks.map(ranksOf)).toEqual([
      [1, 2.5, 2.5, 4],
      [1.5, 1.5, 3, 4],
      [2, 1, 3, 4],
    ]);
    expect(kendallW(marks)).toBeCloseTo(438 / 504, 12);
  });

  it('is 1 for one order and 0 for two judges of opposite minds', () => {
    expect(
      kendallW([
        [3, 2, 1],
        [30, 20, 10],
        [9, 5, 4],
      ]),
    ).toBeCloseTo(1, 12);
    expect(
      kendallW([
        [3, 2, 1],
        [1, 2, 3],
      ]),
    ).toBeCloseTo(0, 12);
  });

  it('is not there for one judge, one take, or judges who tell nobody apart', () => {
    expect([
      kendallW([[1, 2]]),
      kendallW([[1], [2]]),
      kendallW([
        [5, 5],
        [7, 7],
      ]),
    ]).toEqual([null, null, null]);
  });

  // Source: Kendall: without ties the mean of Spearman's coefficients over all pairs of judges is (m W − 1) ÷ (m − 1).
  it('goes with the mean of Spearman’s coefficients', () => {
    const order = fc.shuffledSubarray([1, 2, 3, 4, 5, 6, 7], { minLength: 7 });
    fc.assert(
      fc.property(fc.array(order, { minLength: 2, maxLength: 6 }), (judges) => {
        const [m, n] = [judges.length, 7];
        const pairs = judges.flatMap((a, i) => judges.slice(i + 1).map((b) => [a, b] as const));
        const rho = pairs.map(([a, b]) => {
          const squares = a.reduce((sum, rank, k) => sum + (rank - (b[k] as number)) ** 2, 0);
          return 1 - (6 * squares) / (n * (n * n - 1));
        });
        const mean = rho.reduce((sum, one) => sum + one, 0) / rho.length;
        expect(mean).toBeCloseTo((m * (kendallW(judges) as number) - 1) / (m - 1), 9);
      }),
    );
  });
});

describe('places', () => {
  // 1.96 standard errors of a difference: 1.96 · √2 · 0.01 = 0.0277. Source: normal distribution, 95 %.
  it('are shared where a difference is smaller than the error of measuring', () => {
    const at = (...shares: number[]) => placesOf(shares.map((share) => ({ share, error: 0.01 })));
    expect(at(0.9, 0.88, 0.7)).toEqual([
      { best: 1, worst: 2 },
      { best: 1, worst: 2 },
      { best: 3, worst: 3 },
    ]);
    expect(at(0.9, 0.87)).toEqual([
      { best: 1, worst: 1 },
      { best: 2, worst: 2 },
    ]);
  });

  // A chain: neighbours cannot be told apart, the ends can.
  it('may be open on both sides', () => {
    const places = placesOf([0.9, 0.88, 0.86].map((share) => ({ share, error: 0.01 })));
    expect(places).toEqual([
      { best: 1, worst: 2 },
      { best: 1, worst: 3 },
      { best: 2, worst: 3 },
    ]);
  });
});

describe('the error of points', () => {
  // Two doubtful places of ten, each worth two points: √(2² · 2 · ¼). Source: variance of the toss of a coin.
  it('comes from doubtful places', () => {
    expect(pointsError([{ possible: 20, of: 10, fix: 0, watch: 2 }], 0)).toBeCloseTo(Math.SQRT2, 9);
  });

  it('is never nothing for a take that lasts, and grows with what was found', () => {
    const clean = pointsError([{ possible: 20, of: 10, fix: 0, watch: 0 }], 1);
    expect(clean).toBeGreaterThan(0);
    expect(pointsError([{ possible: 20, of: 10, fix: 3, watch: 0 }], 1)).toBeGreaterThan(clean);
  });
});

const pointsOf = (criterion: string, notes: number) =>
  criterion === 'notes' ? { possible: 60, given: (60 * notes) / 100 } : { possible: 5, given: 5 };

function take(player: string, notes: number, more: Partial<TakeResult> = {}): TakeResult {
  const result = resultOf({ ...sampleReview({ findings: [] }), player });
  const criteria = result.criteria.map((line) => ({
    ...line,
    of: 100,
    met: notes,
    // sound has none until a brief gives it some
    ...(line.criterion === 'sound' ? {} : { points: pointsOf(line.criterion, notes) }),
  }));
  return { ...result, criteria, ...more };
}

const TAKES: readonly (readonly [string, TakeResult])[] = [
  ['a', take('Ada', 100)],
  ['b', take('Bo', 99.5)],
  ['c', take('Cy', 60)],
  ['d', take('Di', 100, { played: { played: 9, of: 24, stretches: [], restarts: 0, ending: 'cut-off' } })],
];
const mark = (name: string, judge: string, points: number): PanelMark => ({
  take: name,
  judge,
  criterion: 'notes',
  points,
});
const MARKS = [
  mark('a', 'Berg', 20),
  mark('a', 'Cole', 22),
  mark('Bo', 'Berg', 30),
  mark('Bo', 'Cole', 28),
  mark('c', 'Berg', 50),
];
const standing = (marks: readonly PanelMark[] = [], chairs: number | null = null) =>
  toStanding({
    tool: sampleReview().tool,
    rows: TAKES.map(([name, result]) => standingRow(name, result)),
    ...{ marks, chairs, language: 'en' },
  });

describe('the table for a director', () => {
  // A result of a program that did not know the sound yet has no line of it; neither points nor their error may differ.
  it('is the same with and without a line of sound that earns nothing', () => {
    const without = TAKES.map(([name, result]) => {
      const criteria = result.criteria.filter(({ criterion }) => criterion !== 'sound');
      return standingRow(name, { ...result, criteria });
    });
    const rows = TAKES.map(([name, result]) => standingRow(name, result));
    expect(rows.map(({ criteria }) => criteria)).toEqual(without.map(({ criteria }) => criteria));
    expect(rows.map(({ error }) => error)).toEqual(without.map(({ error }) => error));
    expect(rows[0]?.criteria).toHaveLength(8);
  });

  it('has most points first, places as far as they are sure, and no points for a take cut off', () => {
    const [group] = standing().groups;
    expect(group?.takes.map(({ name, given, place }) => [name, given, place])).toEqual([
      ['a', 95, { best: 1, worst: 2 }],
      ['b', 94.7, { best: 1, worst: 2 }],
      ['c', 71, { best: 3, worst: 3 }],
      ['d', null, null],
    ]);
  });

  it('seats whom the measures tell, and asks to hear the others again', () => {
    const chairs = (count: number) => standing([], count).groups[0]?.takes.map(({ chair }) => chair);
    expect(chairs(1)).toEqual(['listen-again', 'listen-again', 'no', 'no']);
    expect(chairs(2)).toEqual(['sure', 'sure', 'no', 'no']);
  });

  // By hand: means 21, 29 and 50; by measure Cy is third of three, so that the panel's first is far away.
  it('shows the panel beside, its agreement, and where both part ways', () => {
    const { groups, unknown } = standing([...MARKS, mark('nobody', 'Berg', 1)]);
    const [group] = groups;
    expect(group?.takes.map(({ panel, partsWays }) => [panel?.mean, panel?.place.best, partsWays])).toEqual([
      [21, 3, true],
      [29, 2, false],
      [50, 1, true],
      [undefined, undefined, false],
    ]);
    expect(group?.takes[0]?.panel?.spread).toBeCloseTo(Math.SQRT2, 1);
    expect(group?.agreement).toBe(1);
    expect(unknown).toEqual(['nobody']);
  });

  it('is a page, whose first words are that it supports a panel', async () => {
    const input = {
      standing: standing(MARKS, 2),
      paper: 'a4',
      creationDate: new Date('2026-03-02T00:00:00Z'),
    } as const;
    const pdf = inspectPdf(await drawStanding(input));
    const text = pdf.pageTexts.join(' ').replace(/\s+/g, ' ');
    expect(text.indexOf('supports a panel and never replaces one')).toBeLessThan(text.indexOf('Ada'));
    for (const said of [
      'Short-list for 2 chairs',
      'Kendall’s W = 1',
      'Listen again to Cy and Ada',
      '94.7 of 95 ±',
      '1–2',
    ]) {
      expect(text).toContain(said);
    }
    expect([pdf.faults, pdf.unmarked]).toEqual(['', []]);
  });

  it('comes with a blank sheet that shows no measure and no name of a player', async () => {
    const input = { standing: standing(), paper: 'letter', creationDate: new Date('2026-03-02T00:00:00Z') } as const;
    const pdf = inspectPdf(await drawPanelSheet(input));
    const text = pdf.pageTexts.join(' ').replace(/\s+/g, ' ');
    expect(text).toContain('Notes (of 60)');
    expect(text).not.toMatch(/Ada|94\.7|71/);
    expect([pdf.faults, pdf.unmarked]).toEqual(['', []]);
  });

  it('is a CSV with a column a judge', () => {
    const rows = parse(standingCsv(standing(MARKS, 2)), { bom: true, columns: true }) as Record<string, string>[];
    expect(rows[1]).toMatchObject({
      take: 'b',
      notes_points: '59.7',
      points_given: '94.7',
      'judge Berg': '30',
      chair: 'sure',
    });
    expect(rows[3]).toMatchObject({ take: 'd', points_given: '', place_best: '', ending: 'cut-off', parts_ways: '' });
  });
});

describe('marks of a panel', () => {
  const read = (text: string) => readMarks(new TextEncoder().encode(text));
  const faultOf = (text: string): unknown => {
    try {
      return read(text);
    } catch (error) {
      return error instanceof InputError ? error.fault : error;
    }
  };

  it('are read with commas or semicolons, in any order of heads', () => {
    const expected = [{ take: '07', judge: 'Berg', criterion: 'notes', points: 27.5 }];
    expect(read('take,judge,criterion,points\n07,Berg,notes,27.5\n')).toEqual(expected);
    expect(read('\uFEFFPoints;Take;Judge;Criterion\r\n27,5;07;Berg;Notes\r\n\r\n')).toEqual(expected);
  });

  it('are refused with the line where something is missing', () => {
    expect(faultOf('take,judge\n')).toMatchObject({ code: 'marks-heads' });
    for (const line of ['07,Berg,notes,many', '07,Berg,looks,3', ',Berg,notes,3', '07,,notes,3', '07,Berg,notes,-3']) {
      expect(faultOf(`take,judge,criterion,points\n07,Berg,notes,3\n${line}\n`)).toMatchObject({
        code: 'marks-line',
        facts: { line: 3 },
      });
    }
  });
});
