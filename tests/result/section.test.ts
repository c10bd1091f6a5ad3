import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { printable } from '../../src/base/index.js';
import {
  cellText,
  type ResultFinding,
  type SectionResult,
  sectionCsv,
  sectionResultJsonSchema,
  sectionRow,
  toSectionResult,
} from '../../src/result/index.js';
import type { SectionInput } from '../../src/result/section/to-section-result.js';
import { resultOf, SAMPLE_FINDINGS, type SampleOptions, sampleReview } from '../helpers/sample-review.js';

const [accidental, contrast, late, pitch, hairpin, tempo, praise] = SAMPLE_FINDINGS as [
  ResultFinding,
  ResultFinding,
  ResultFinding,
  ResultFinding,
  ResultFinding,
  ResultFinding,
  ResultFinding,
];

function section(takes: readonly SampleOptions[], failures: SectionInput['failures'] = []): SectionResult {
  const { tool } = sampleReview();
  const rows = takes.map((options, i) => sectionRow(`take-${i}`, resultOf(sampleReview(options))));
  return toSectionResult({ tool, rows, failures });
}

const three = section(
  [
    { player: 'Ada', findings: [accidental, pitch, tempo, praise] },
    { player: 'Bo', findings: [accidental, { ...accidental, weight: 'watch' }, late] },
    { player: 'Cy', fit: 'other' },
  ],
  [{ file: 'broken.wav', code: 'wav-damaged', fault: { code: 'wav-format-cut', facts: {} } }],
);

describe('the section’s document', () => {
  it('is valid against the schema that is published', () => {
    const validate = new Ajv2020().compile(sectionResultJsonSchema());
    expect([validate(JSON.parse(JSON.stringify(three))), validate.errors]).toEqual([true, null]);
  });

  // Counted by hand from the findings given.
  it('counts how many players each place troubles, most players first', () => {
    expect(three.troubles.map(({ bar, kind, players, fix, who }) => [bar, kind, players, fix, who])).toEqual([
      ['3', 'accidental', 2, 2, ['Ada', 'Bo']],
      ['9', 'late-entry', 1, 1, ['Bo']],
      [null, 'off-tempo', 1, 0, ['Ada']],
      ['6', 'note-out-of-tune', 1, 0, ['Ada']],
    ]);
    expect(three.players).toBe(3);
  });

  // Counted by hand: Ada's first take is mended, and her second counts.
  it('counts the latest take of each player only, players of a score among those of that score', () => {
    const rows = [
      sectionRow('a1', {
        ...resultOf({ ...sampleReview({ findings: [accidental] }), player: 'Ada', date: '2026-03-02' }),
      }),
      sectionRow('a2', { ...resultOf({ ...sampleReview({ findings: [] }), player: 'Ada', date: '2026-03-09' }) }),
      sectionRow('b', {
        ...resultOf({ ...sampleReview({ findings: [accidental] }), player: 'Bo', date: '2026-03-02' }),
      }),
    ];
    const { troubles } = toSectionResult({ tool: sampleReview().tool, rows, failures: [] });
    expect(troubles.map(({ bar, beat, players, of, who }) => [bar, beat, players, of, who])).toEqual([
      ['3', 2, 1, 2, ['Bo']],
    ]);
  });

  it('keeps notes of one bar apart', () => {
    const other = { ...accidental, beat: 4, index: 19 };
    const { troubles } = section([
      { player: 'Ada', findings: [accidental] },
      { player: 'Bo', findings: [other] },
    ]);
    expect(troubles.map(({ bar, beat, players }) => [bar, beat, players])).toEqual([
      ['3', 2, 1],
      ['3', 4, 1],
    ]);
  });

  it('lists what is to be fixed before what is to be watched, and a habit once', () => {
    const again = {
      ...contrast,
      bar: '20',
      weight: 'watch' as const,
      ownWeight: 'fix' as const,
      ledByBar: contrast.bar,
    };
    const watched = { ...pitch, weight: 'watch' as const };
    const { troubles } = section([
      { player: 'Ada', findings: [contrast, again, watched] },
      { player: 'Bo', findings: [contrast, again, watched] },
      { player: 'Cy', findings: [watched] },
    ]);
    expect(troubles.map(({ kind, bar, alsoBars, players, fix }) => [kind, bar, alsoBars, players, fix])).toEqual([
      ['weak-contrast', '13', ['20'], 2, 2],
      ['note-out-of-tune', '6', undefined, 3, 0],
    ]);
  });

  it('counts findings a bar for each take; those about the whole take stand in no bar, praise is no trouble', () => {
    expect(three.takes.map((take) => take.barTroubles)).toEqual([
      [
        { bar: '3', fix: 1, watch: 0 },
        { bar: '6', fix: 0, watch: 1 },
      ],
      [
        { bar: '3', fix: 1, watch: 1 },
        { bar: '9', fix: 1, watch: 0 },
      ],
      [],
    ]);
  });

  it('counts two takes of one player as one player', () => {
    const twice = section([
      { player: 'Ada', findings: [hairpin] },
      { player: 'Ada', findings: [hairpin] },
    ]);
    expect([twice.players, twice.troubles[0]?.players]).toEqual([1, 1]);
  });

  it('names the first three things, and no more', () => {
    const [take] = section([{ findings: [accidental, contrast, late, pitch] }]).takes;
    expect(take?.first).toHaveLength(3);
    expect(take?.first[0]).toContain('Bar 3, beat 2');
  });

  it('never puts 0 where nothing was measured', () => {
    const other = three.takes[2];
    expect(other?.notesAsWritten).toHaveProperty('notMeasured');
    expect(other?.playedQuarterBpm).toHaveProperty('notMeasured');
    expect(other?.criteria).toEqual([]);
  });

  it('lists the bars as printed, once each', () => {
    expect(three.bars).toEqual(Array.from({ length: 24 }, (_, i) => String(i + 1)));
  });
});

describe('takes of several scores', () => {
  const { tool } = sampleReview();
  const rowOf = (name: string, file: string, options: SampleOptions) => {
    const result = resultOf(sampleReview(options));
    return sectionRow(name, { ...result, score: { ...result.score, file } });
  };
  const two = toSectionResult({
    tool,
    rows: [
      rowOf('a', 'flute.musicxml', { player: 'Ada', findings: [accidental] }),
      rowOf('b', 'horn.musicxml', { player: 'Bo', findings: [accidental] }),
    ],
    failures: [],
  });

  it('name their scores, and never add up bars of different ones', () => {
    expect(two.score).toBeNull();
    expect(two.scores.map(({ file }) => file)).toEqual(['flute.musicxml', 'horn.musicxml']);
    expect(two.takes.map(({ score }) => score)).toEqual(['flute.musicxml', 'horn.musicxml']);
    expect(two.troubles.map(({ score, bar, players }) => [score, bar, players])).toEqual([
      ['flute.musicxml', '3', 1],
      ['horn.musicxml', '3', 1],
    ]);
    expect(two.bars).toEqual([]);
  });

  it('are valid against the schema that is published', () => {
    expect(new Ajv2020().validate(sectionResultJsonSchema(), JSON.parse(JSON.stringify(two)))).toBe(true);
  });
});

describe('the section’s CSV', () => {
  // csv-parse is the reference reader; it is strict about RFC 4180.
  const read = (csv: string) =>
    parse(csv, { bom: true, columns: true, record_delimiter: '\r\n' }) as Record<string, string>[];

  it('is one row a take under one row of heads, as RFC 4180 has it', () => {
    const rows = read(sectionCsv(three));
    expect(rows.map((row) => row.take)).toEqual(['broken.wav', 'take-0', 'take-1', 'take-2']);
    expect(rows[1]).toMatchObject({
      ...{ take: 'take-0', player: 'Ada', date: '2026-03-02', outcome: 'reviewed' },
      ...{ tempo_quarter_bpm: '92.14', tuning_cents_from_a440: '4.3', notes_as_written: '142', notes_in_part: '144' },
      ...{ notes_fix: '1', notes_watch: '0', intonation_watch: '1' },
    });
    expect(rows[3]).toMatchObject({
      outcome: 'not-this-score',
      notes_as_written: 'not measured',
      notes_fix: 'not measured',
    });
    expect(sectionCsv(three).replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  // Source: OWASP, "CSV Injection": cells that begin with = + - @ tab, carriage return or line feed are run by spreadsheets;
  // the wide forms of the signs from memory.
  it('lets no text become a formula, and loses nothing of it that can be printed', () => {
    const hostile = fc
      .tuple(fc.constantFrom('=', '+', '-', '@', '\t', '\r', '\n', '\uFF1D', "'", "'=", 'a', '"', ','), fc.string())
      .map(([first, rest]) => first + rest);
    fc.assert(
      fc.property(hostile, hostile, (player, file) => {
        const [take] = three.takes;
        if (take === undefined) throw new Error('no take');
        const one = { ...three, takes: [{ ...take, player, file, first: [player] }], failures: [] };
        const [row] = read(sectionCsv(one));
        for (const [cell, text] of [
          [row?.player, player],
          [row?.file, file],
          [row?.first, player],
        ]) {
          expect(cell).not.toMatch(/^[=+\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20]/);
          expect(cellText(cell ?? '')).toBe(printable(text ?? ''));
        }
      }),
    );
  });

  it('has a row for a take that failed, with the reason and without a number', () => {
    const [row] = read(sectionCsv(three));
    expect(row).toMatchObject({
      outcome: 'failed',
      failure:
        'wav-damaged: the WAV header is damaged: its format description is cut short; export or record the take again',
    });
    const cells = Object.entries(row ?? {}).filter(([head]) => /_fix|_watch|notes_|tempo_|tuning_/.test(head));
    expect(cells).toHaveLength(22);
    expect([row?.bars_played, row?.ending, row?.latest]).toEqual(['not measured', 'not measured', 'not measured']);
    for (const [, cell] of cells) expect(cell).toBe('not measured');
  });

  it('says that a criterion was not judged, and never shows 0 for it', () => {
    const { tool } = sampleReview();
    const result = resultOf(sampleReview({ findings: [] }));
    const criteria = result.criteria.map((line) => ({ ...line, judged: line.criterion !== 'dynamics' }));
    const csv = sectionCsv(toSectionResult({ tool, rows: [sectionRow('a', { ...result, criteria })], failures: [] }));
    expect(read(csv)[0]).toMatchObject({
      ...{ dynamics_fix: 'not judged', dynamics_watch: 'not judged', rhythm_fix: '0', rhythm_watch: '0' },
    });
  });

  it('leaves a negative number a number', () => {
    const [take] = three.takes;
    if (take === undefined) throw new Error('no take');
    const [row] = read(sectionCsv({ ...three, takes: [{ ...take, centsFromA440: -12.3 }], failures: [] }));
    expect(row?.tuning_cents_from_a440).toBe('-12.3');
  });
});
