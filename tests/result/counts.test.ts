import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import type { ResultFinding, TakeResult } from '../../src/result/index.js';
import { jsonPieces } from '../../src/result/json-pieces.js';
import * as quantities from '../../src/result/quantities.js';
import { cellText, csvText, exactCell, textCell } from '../../src/result/section/csv-text.js';
import { latestTakes } from '../../src/result/section/latest-takes.js';
import { sameRecordings } from '../../src/result/section/same-recordings.js';
import { sectionCsv } from '../../src/result/section/section-csv.js';
import { type SectionRow, sectionRow } from '../../src/result/section/section-row.js';
import { sectionTroubles } from '../../src/result/section/section-troubles.js';
import { toSectionResult } from '../../src/result/section/to-section-result.js';
import { kendallW, ranksOf } from '../../src/result/standing/kendall-w.js';
import { placesOf } from '../../src/result/standing/places.js';
import { pointsError } from '../../src/result/standing/points-error.js';
import { toJson } from '../../src/result/to-json.js';
import { resultOf, SAMPLE_FINDINGS, sampleReview } from '../helpers/sample-review.js';

/**
 * Counts, sums, roundings and orders of the documents, worked out by hand.
 *
 * Source: definition; decimals as the published schema describes each quantity; CSV by RFC 4180; Kendall's W by Siegel & Castellan
 * 1988, 9.5.
 */
const plain = sectionRow('plain', resultOf(sampleReview({ findings: [] })));
interface Own {
  readonly name?: string;
  readonly player?: string | null;
  readonly date?: string | null;
  readonly outcome?: TakeResult['outcome'];
  readonly score?: Partial<SectionRow['score']>;
  readonly sha256?: string;
}
function row(
  troubles: SectionRow['troubles'],
  { name = 'a', player = 'Ada', date = '2026-03-02', outcome = 'reviewed', score = {}, sha256 = '' }: Own = {},
): SectionRow {
  const bars = ['1', '2', '3', '4'];
  return {
    ...plain,
    bars,
    sha256,
    score: { ...plain.score, ...score },
    troubles,
    take: { ...plain.take, name, player, date, outcome },
  };
}
const trouble = (
  bar: string | null,
  kind: ResultFinding['kind'],
  weight: 'fix' | 'watch' = 'fix',
  beat?: number,
): SectionRow['troubles'][number] => {
  const criterion =
    kind === 'wrong-note' || kind === 'missed-note' ? 'notes' : kind === 'off-tempo' ? 'tempo' : 'rhythm';
  return { bar, kind, criterion, weight, ...(beat === undefined ? {} : { beat }) };
};
const briefly = (rows: readonly SectionRow[]) =>
  sectionTroubles(rows).map(
    ({ kind, bar, players, of, fix, alsoBars = [] }) =>
      `${kind} ${bar}${alsoBars.map((b) => `+${b}`).join('')} ${fix}/${players} of ${of}`,
  );

describe('what troubles a section', () => {
  it('is counted once a player, among the reviewed players of the score', () => {
    const rows = [
      row([trouble('1', 'wrong-note'), trouble('1', 'wrong-note', 'watch')]),
      row([trouble('1', 'wrong-note', 'watch')], { name: 'b', player: 'Bo' }),
      row([], { name: 'c', player: 'Cy' }),
      row([], { name: 'd', player: 'Di', outcome: 'too-poor' }),
      row([trouble('1', 'wrong-note')], { name: 'e', player: null, score: { file: 'z.xml' } }),
    ];
    expect(briefly(rows)).toEqual(['wrong-note 1 1/2 of 3', 'wrong-note 1 1/1 of 1']);
    expect(sectionTroubles(rows).map(({ score, who }) => [score, who])).toEqual([
      [plain.score.file, ['Ada', 'Bo']],
      ['z.xml', ['e']],
    ]);
  });

  it('comes with fixes first, then most players, then most fixes, then by score, place and kind', () => {
    const two = (a: SectionRow['troubles'], b: SectionRow['troubles'], c: SectionRow['troubles'] = []) =>
      briefly([row(a), row(b, { name: 'b', player: 'Bo' }), row(c, { name: 'c', player: 'Cy' })]);
    const [w, m] = ['wrong-note', 'missed-note'] as const;
    expect(two([trouble('1', w, 'watch'), trouble('3', m)], [trouble('1', w, 'watch')])).toEqual([
      'missed-note 3 1/1 of 3',
      'wrong-note 1 0/2 of 3',
    ]);
    expect(two([trouble('1', w), trouble('3', m)], [trouble('3', m, 'watch')])).toEqual([
      'missed-note 3 1/2 of 3',
      'wrong-note 1 1/1 of 3',
    ]);
    expect(two([trouble('1', w), trouble('3', m)], [trouble('1', w, 'watch'), trouble('3', m)])).toEqual([
      'missed-note 3 2/2 of 3',
      'wrong-note 1 1/2 of 3',
    ]);
    expect(two([trouble('3', w), trouble('1', w), trouble(null, 'off-tempo'), trouble('1', m)], [])).toEqual([
      'off-tempo null 1/1 of 3',
      'missed-note 1 1/1 of 3',
      'wrong-note 1 1/1 of 3',
      'wrong-note 3 1/1 of 3',
    ]);
    // a bar that the score does not list stands behind the others
    expect(two([trouble('77', w), trouble('4', w)], [])).toEqual(['wrong-note 4 1/1 of 3', 'wrong-note 77 1/1 of 3']);
    const byScore = briefly([
      row([trouble('1', w)], { score: { file: 'b.xml' } }),
      row([trouble('1', w)], { score: { file: 'a.xml' } }),
    ]);
    expect(byScore).toHaveLength(2);
  });

  it('keeps beats apart where it is about one note, in their order', () => {
    expect(briefly([row([trouble('1', 'wrong-note', 'fix', 3), trouble('1', 'wrong-note', 'fix', 2)])])).toHaveLength(
      2,
    );
    expect(
      sectionTroubles([row([trouble('1', 'wrong-note', 'fix', 3), trouble('1', 'wrong-note', 'fix', 2)])]).map(
        ({ beat }) => beat,
      ),
    ).toEqual([2, 3]);
    expect('beat' in sectionTroubles([row([trouble('1', 'wrong-note')])])[0]!).toBe(false);
  });

  it('tells a habit once, at the place of most players, for those who have it there', () => {
    const late = (bar: string, weight: 'fix' | 'watch' = 'fix') => trouble(bar, 'late-entry', weight);
    expect(briefly([row([late('2'), late('3'), late('1')]), row([late('3')], { name: 'b', player: 'Bo' })])).toEqual([
      'late-entry 3+1+2 2/2 of 2',
    ]);
    // Cy has it elsewhere and not there: that stands for itself
    expect(
      briefly([
        row([late('3')]),
        row([late('3')], { name: 'b', player: 'Bo' }),
        row([late('1')], { name: 'c', player: 'Cy' }),
      ]),
    ).toEqual(['late-entry 3 2/2 of 3', 'late-entry 1 1/1 of 3']);
    // a fix in another bar counts for the place that leads
    expect(
      briefly([row([late('3', 'watch'), late('1')]), row([late('3', 'watch')], { name: 'b', player: 'Bo' })]),
    ).toEqual(['late-entry 3+1 1/2 of 2']);
    // the same notes in two bars are two things
    expect(briefly([row([trouble('1', 'wrong-note'), trouble('2', 'wrong-note')])])).toHaveLength(2);
    expect(briefly([row([late('1'), trouble('1', 'early-entry')])])).toHaveLength(2);
  });
});

describe('takes of one player', () => {
  const latest = (...rows: readonly SectionRow[]) => {
    const found = latestTakes(rows);
    return rows.filter((one) => found.has(one)).map(({ take }) => take.name);
  };

  it('count with the latest, by day and then by name', () => {
    expect(latest(row([], { name: 'a', date: '2026-03-09' }), row([], { name: 'b', date: '2026-03-02' }))).toEqual([
      'a',
    ]);
    expect(latest(row([], { name: 'b' }), row([], { name: 'a' }))).toEqual(['b']);
    expect(latest(row([], { name: 'a' }), row([], { name: 'b' }))).toEqual(['b']);
    expect(latest(row([], { name: 'a', date: null }), row([], { name: 'b', date: '2026-03-02' }))).toEqual(['b']);
  });

  it('count each where player or score differ, or nobody is named', () => {
    expect(latest(row([], { name: 'a' }), row([], { name: 'b', player: 'Bo' }))).toEqual(['a', 'b']);
    expect(latest(row([], { name: 'a' }), row([], { name: 'b', score: { file: 'b.xml' } }))).toEqual(['a', 'b']);
    expect(latest(row([], { name: 'a' }), row([], { name: 'b', score: { sha256: 'bb' } }))).toEqual(['a', 'b']);
    expect(latest(row([], { name: 'a', player: null }), row([], { name: 'b', player: null }))).toEqual(['a', 'b']);
  });

  it('are told where several players sent the same recording', () => {
    const same = (...players: readonly (string | null)[]) =>
      sameRecordings(players.map((player, i) => row([], { name: `t${i}`, player, sha256: 'aa' })));
    expect(same('Ada', 'Bo')).toEqual([['t0', 't1']]);
    expect(same('Ada', 'Ada')).toEqual([]);
    expect(same(null, null)).toEqual([['t0', 't1']]);
    expect(sameRecordings([row([], { player: 'Ada' }), row([], { player: 'Bo' })])).toEqual([]);
  });
});

describe('the row of a take', () => {
  const [accidental, contrast, late, pitch, , tempo] = SAMPLE_FINDINGS as ResultFinding[];
  const made = (changed: Partial<TakeResult>, findings: readonly ResultFinding[] = []) =>
    sectionRow('name', { ...resultOf(sampleReview({ findings })), ...changed });

  it('counts what is to fix and to watch, without what another one speaks for, and names the first three', () => {
    const led = { ...contrast!, bar: '20', ledByBar: '13', weight: 'watch' as const, ownWeight: 'fix' as const };
    const { toFix, toWatch, first, troubles } = made({}, [accidental!, contrast!, led, late!, pitch!, tempo!]);
    expect([toFix, toWatch]).toEqual([3, 2]);
    expect(first.map(({ bar }) => bar)).toEqual(['3', '13', '9']);
    expect(troubles.map(({ bar, weight, beat }) => [bar, weight, beat])).toEqual([
      ['3', 'fix', 2],
      ['13', 'fix', undefined],
      ['20', 'fix', undefined],
      ['9', 'fix', undefined],
      ['6', 'watch', 3],
      [null, 'watch', undefined],
    ]);
  });

  it('has points of what could be measured, unless the take was cut off', () => {
    const criteria = resultOf(sampleReview()).criteria.map((line, i) => ({
      ...line,
      ...(i < 3 ? { points: { possible: 10, given: i === 2 ? null : 4 + i } } : {}),
    }));
    const played = { played: 20, of: 24, stretches: [], restarts: 0, ending: 'broken-off' as const };
    expect(made({ criteria, played }).take).toMatchObject({
      points: { given: 9, possible: 20 },
      played: { played: 20, of: 24, ending: 'broken-off' },
    });
    expect(made({ criteria, played: { ...played, ending: 'cut-off' } }).take.points).toBeUndefined();
    expect(made({ criteria: criteria.slice(3) }).take.points).toBeUndefined();
  });

  it('names the criteria of which nothing was played', () => {
    const lines = resultOf(sampleReview()).criteria;
    const played = { played: 20, of: 24, stretches: [], restarts: 0, ending: 'broken-off' as const };
    const out = (change: object) =>
      made({ played, criteria: [{ ...lines[0]!, judged: false, of: 3, notPlayed: 3, met: 0, ...change }] }).take
        .notPlayed;
    expect(out({})).toEqual([lines[0]!.criterion]);
    expect([out({ judged: true }), out({ of: 0, notPlayed: 0 }), out({ notPlayed: 2 })]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });

  it('counts troubles a bar, in the order of the part', () => {
    const at = (bar: string, weight: 'fix' | 'watch') => ({ ...accidental!, bar, weight });
    const { barTroubles } = made({}, [
      at('9', 'fix'),
      at('3', 'watch'),
      at('9', 'watch'),
      at('3', 'watch'),
      tempo!,
    ]).take;
    expect(barTroubles).toEqual([
      { bar: '3', fix: 0, watch: 2 },
      { bar: '9', fix: 1, watch: 1 },
    ]);
  });

  it('has only the criteria that were judged, and notes only of what was reviewed', () => {
    const lines = resultOf(sampleReview()).criteria;
    const criteria = lines.map((line, i) => ({ ...line, judged: i !== 1 }));
    expect(made({ criteria }).take.criteria.map(({ criterion }) => criterion)).not.toContain(lines[1]!.criterion);
    expect(made({ outcome: 'too-poor' }).take.notesAsWritten).toMatchObject({
      code: 'not-reviewed',
    });
    expect(made({}).take.notesAsWritten).toBeTypeOf('number');
  });
});

describe('the section’s document', () => {
  const of = (...rows: readonly SectionRow[]) =>
    toSectionResult({ tool: { name: 't', version: '1' }, rows, failures: [] });

  it('has one score, or several with their bars', () => {
    const one = of(row([]), row([], { name: 'b', player: 'Bo' }));
    expect([one.score?.file, one.scores.length, one.bars, one.players]).toEqual([
      plain.score.file,
      1,
      ['1', '2', '3', '4'],
      2,
    ]);
    const two = of(row([], { score: { file: 'b.xml' } }), { ...row([], { score: { file: 'a.xml' } }), bars: ['1'] });
    expect([two.score, two.bars, two.scores.map(({ file, barNumbers }) => [file, barNumbers])]).toEqual([
      null,
      [],
      [
        ['a.xml', ['1']],
        ['b.xml', ['1', '2', '3', '4']],
      ],
    ]);
    const same = of(row([], { score: { sha256: 'aa' } }), { ...row([], { score: { sha256: 'bb' } }), bars: ['1'] });
    expect(same.scores.map(({ sha256, barNumbers }) => [sha256, barNumbers?.length])).toEqual([
      ['aa', 4],
      ['bb', 1],
    ]);
  });

  it('names the score it was given where there is no take', () => {
    const score = { ...plain.score, file: 'given.xml' };
    const empty = toSectionResult({ tool: { name: 't', version: '1' }, rows: [], failures: [], score });
    expect([empty.score?.file, empty.players, empty.bars]).toEqual(['given.xml', 0, []]);
    expect(of().score).toBeNull();
    const taken = toSectionResult({ tool: { name: 't', version: '1' }, rows: [row([])], failures: [], score });
    expect(taken.score?.file).toBe(plain.score.file);
  });

  it('counts the latest take of a player, says so, and names the same recordings', () => {
    const document = of(
      row([trouble('1', 'wrong-note')], { name: 'a', date: '2026-03-02', sha256: 'aa' }),
      row([trouble('2', 'wrong-note')], { name: 'b', date: '2026-03-09' }),
      row([], { name: 'c', player: 'Cy', sha256: 'aa' }),
    );
    expect(document.takes.map(({ name, latest }) => [name, latest])).toEqual([
      ['a', false],
      ['b', true],
      ['c', true],
    ]);
    expect(document.troubles.map(({ bar }) => bar)).toEqual(['2']);
    expect(document.same).toEqual([['a', 'c']]);
    expect('same' in of(row([]))).toBe(false);
  });

  it('as a table has a line a take, and what is not known in words', () => {
    const lost = {
      file: 'z.wav',
      name: 'aa',
      code: 'wav-damaged',
      fault: { code: 'wav-format-cut', facts: {} },
    } as const;
    const rows = [
      row([], { name: 'b', player: null, date: null }),
      { ...row([], { name: 'a' }), roster: { desk: '2', take: 'x' } },
    ];
    const document = toSectionResult({ tool: { name: 't', version: '1' }, rows, failures: [lost] });
    const table = parse(sectionCsv(document), { bom: true, columns: true }) as Record<string, string>[];
    expect(
      table.map(({ take, outcome, latest, desk, roster_take: other }) => [take, outcome, latest, desk, other]),
    ).toEqual([
      ['a', 'reviewed', 'yes', '2', 'x'],
      ['aa', 'failed', table[1]!.latest, '', ''],
      ['b', 'reviewed', 'yes', '', ''],
    ]);
    expect(table[1]!.failure).toMatch(/^wav-damaged: /);
    expect(table[1]!.notes_fix).toBe(table[1]!.latest);
    expect([table[2]!.player, table[2]!.date, table[0]!.player]).toEqual(['', '', 'Ada']);
    const again = toSectionResult({
      tool: { name: 't', version: '1' },
      rows: [row([], { name: 'a' }), row([], { name: 'b' })],
      failures: [],
    });
    const told = parse(sectionCsv(again), { bom: true, columns: true }) as Record<string, string>[];
    expect(told.map(({ latest }) => latest)).toEqual(['no', 'yes']);
  });
});

describe('cells', () => {
  it('are text for a spreadsheet, never a formula, and come back', () => {
    for (const text of ['=1+1', '+1', '-1', '@x', "'=1", '\uFF1Dx', '\tx']) {
      expect(exactCell(text)).toBe(`'${text}`);
      expect(cellText(exactCell(text))).toBe(text);
    }
    for (const text of ['a=1', "'a", '', '1-2']) {
      expect(exactCell(text)).toBe(text);
      expect(cellText(exactCell(text))).toBe(text);
    }
    expect(textCell('=1')).toBe("'=1");
    // Source: RFC 4180: lines end with CR LF, and quotes are doubled.
    expect(
      csvText([
        ['a', 'b"c'],
        ['d', 'e,f'],
      ]),
    ).toBe('\uFEFFa,"b""c"\r\nd,"e,f"\r\n');
  });
});

const ALL: Readonly<Record<string, unknown>> = { ...quantities };

describe('numbers in documents', () => {
  it.each([
    ['seconds', 0.12345, 0.1235],
    ['roughSeconds', 0.12345, 0.12],
    ['decibels', 0.12345, 0.12],
    ['cents', 0.16, 0.2],
    ['beats', 0.12345, 0.1235],
    ['quarters', 0.12345, 0.1235],
    ['tempo', 0.12345, 0.12],
    ['ratio', 0.12345, 0.123],
    ['fraction', 0.12345, 0.1235],
    ['share', 0.12345, 0.1235],
    ['correlation', -0.12345, -0.1235],
    ['smallShare', 0.12345678, 0.123457],
    ['confidence', 0.128, 0.13],
    ['centsPerDb', 0.12345, 0.123],
    ['hertz', 0.12345, 0.12],
    ['points', 0.16, 0.2],
    ['measured', 0.12345, 0.123],
  ] as const)('%s: %d is written %d', (name, value, written) => {
    expect((ALL[name] as () => { parse(value: number): number })().parse(value)).toBe(written);
  });

  it('are rounded away from nought on both sides, and never minus nought', () => {
    const cents = quantities.cents();
    expect([cents.parse(0.25), cents.parse(-0.25), cents.parse(-0.04)]).toEqual([0.3, -0.3, 0]);
    expect(Object.is(cents.parse(-0.04), 0)).toBe(true);
    expect(Object.is(quantities.semitones().parse(-0), 0)).toBe(true);
    expect(quantities.decibelsPer('bar').parse(0.12345)).toBe(0.123);
  });

  it('that are shares lie from nought to one, a correlation from minus one, points above nought', () => {
    const fits = (name: 'share' | 'confidence' | 'smallShare' | 'correlation' | 'points', value: number) =>
      (ALL[name] as () => { safeParse(value: number): { success: boolean } })().safeParse(value).success;
    for (const name of ['share', 'confidence', 'smallShare'] as const) {
      expect([-0.1, 0, 1, 1.1].map((value) => fits(name, value))).toEqual([false, true, true, false]);
    }
    expect([-1.1, -1, 1, 1.1].map((value) => fits('correlation', value))).toEqual([false, true, true, false]);
    expect([fits('points', -0.1), fits('points', 0)]).toEqual([false, true]);
  });

  it('of silence are −200 dB, and the numbers that are too large to round stay', () => {
    expect(quantities.decibels().parse(Number.NEGATIVE_INFINITY)).toBe(-200);
    expect(quantities.decibels().safeParse(Number.POSITIVE_INFINITY).success).toBe(false);
    expect(quantities.seconds().parse(2 ** 53)).toBe(2 ** 53);
  });
});

describe('JSON', () => {
  it('in pieces is the same as at once, with two spaces a level', () => {
    const deep = {
      a: [1, { b: [[{ c: { d: { e: { f: [1, 2] } } } }]], none: undefined }],
      empty: [],
      nothing: {},
      text: 'x\ny',
      no: null,
    };
    expect([...jsonPieces(deep)].join('')).toBe(`${JSON.stringify(deep, null, 2)}\n`);
    expect(toJson({ a: 1 })).toBe('{\n  "a": 1\n}\n');
  });

  it('makes lists when they are come to, a piece each, down to the fifth level', () => {
    const pieces = [...jsonPieces({ made: () => [1, 2][Symbol.iterator]() })];
    expect(pieces.join('')).toBe(`${JSON.stringify({ made: [1, 2] }, null, 2)}\n`);
    const nested = (depth: number): unknown => (depth === 0 ? [7] : [nested(depth - 1)]);
    const count = (depth: number) => [...jsonPieces(nested(depth) as object)].length;
    // each level opened has a piece before and one behind; the one that is written whole has one
    expect(count(4) - count(3)).toBe(2);
    expect(count(5) - count(4)).toBe(0);
    expect(count(6)).toBe(count(5));
  });
});

describe('places', () => {
  it('are shared within the error, 1.96 standard errors of the difference', () => {
    const of = (apart: number) =>
      placesOf([
        { share: 0.5 + apart, error: 0.03 },
        { share: 0.5, error: 0.04 },
      ]);
    // √(0.03² + 0.04²) = 0.05, 1.96 times are 0.098
    expect(of(0.097)).toEqual([
      { best: 1, worst: 2 },
      { best: 1, worst: 2 },
    ]);
    expect(of(0.099)).toEqual([
      { best: 1, worst: 1 },
      { best: 2, worst: 2 },
    ]);
  });

  it('are those of three where the middle one may be either', () => {
    const takes = [0.9, 0.8, 0.7].map((share) => ({ share, error: 0.04 }));
    // 1.96 · 0.0566 = 0.111: neighbours may change, the ends may not
    expect(placesOf(takes)).toEqual([
      { best: 1, worst: 2 },
      { best: 1, worst: 3 },
      { best: 2, worst: 3 },
    ]);
    expect(placesOf([])).toEqual([]);
  });

  it('come from an error that counts doubts, fixes and minutes', () => {
    expect(pointsError([], 2)).toBe(0);
    expect(pointsError([{ possible: 10, of: 0, fix: 3, watch: 3 }], 2)).toBe(0);
    // (10 ÷ 20)² · ¼ · 4 = 0.25
    expect(pointsError([{ possible: 10, of: 20, fix: 0, watch: 4 }], 0)).toBeCloseTo(0.5, 9);
    // (10 ÷ 20)² · (5 ÷ 86) · 4
    expect(pointsError([{ possible: 10, of: 20, fix: 4, watch: 0 }], 0)).toBeCloseTo(Math.sqrt(0.25 * (5 / 86) * 4), 9);
    // false ones, 0.46 a minute, are spread over the criteria
    const two = [
      { possible: 10, of: 20, fix: 0, watch: 0 },
      { possible: 10, of: 20, fix: 0, watch: 0 },
    ];
    expect(pointsError(two, 2)).toBeCloseTo(Math.sqrt(2 * 0.25 * 0.46), 9);
  });

  it('of equal marks are their mean, and judges agree from none to wholly', () => {
    expect(ranksOf([5, 9, 5, 5])).toEqual([3, 1, 3, 3]);
    expect(
      kendallW([
        [1, 2, 3],
        [1, 2, 3],
      ]),
    ).toBe(1);
    // sums of ranks 4, 4, 4
    expect(
      kendallW([
        [1, 2, 3],
        [3, 2, 1],
      ]),
    ).toBe(0);
    // sums 3½ 4 4½ … ranks 3 2 1 and 2 3 1: sums 5, 5, 2; squares 54: (12 · 54 − 3 · 4 · 3 · 16) ÷ (4 · 3 · 8) = 72 ÷ 96
    expect(
      kendallW([
        [1, 2, 3],
        [2, 1, 3],
      ]),
    ).toBeCloseTo(0.75, 9);
    expect([
      kendallW([[1, 2]]),
      kendallW([[1], [2]]),
      kendallW([]),
      kendallW([
        [4, 4],
        [4, 4],
      ]),
    ]).toEqual([null, null, null, null]);
  });
});
