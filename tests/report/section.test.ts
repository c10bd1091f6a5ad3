import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/judge/index.js';
import {
  type SectionResult,
  sectionCsv,
  sectionResultJsonSchema,
  sectionRow,
  toSectionResult,
  toTakeResult,
} from '../../src/report/index.js';
import { SAMPLE_FINDINGS, type SampleOptions, sampleReview } from '../helpers/sample-review.js';

const [accidental, contrast, late, pitch, hairpin, tempo, praise] = SAMPLE_FINDINGS as [
  Finding,
  Finding,
  Finding,
  Finding,
  Finding,
  Finding,
  Finding,
];

function section(takes: readonly SampleOptions[], failures: SectionResult['failures'] = []): SectionResult {
  const { tool } = sampleReview();
  const rows = takes.map((options, i) => sectionRow(`take-${i}`, toTakeResult(sampleReview(options))));
  return toSectionResult({ tool, rows, failures });
}

const three = section(
  [
    { player: 'Ada', findings: [accidental, pitch, tempo, praise] },
    { player: 'Bo', findings: [accidental, { ...accidental, weight: 'watch' }, late] },
    { player: 'Cy', fit: 'other' },
  ],
  [{ file: 'broken.wav', code: 'wav-damaged', message: 'the file ends too early; export it again' }],
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

describe('the section’s CSV', () => {
  // csv-parse is the reference reader; it is strict about RFC 4180.
  const read = (csv: string) =>
    parse(csv, { bom: true, columns: true, record_delimiter: '\r\n' }) as Record<string, string>[];

  it('is one row a take under one row of heads, as RFC 4180 has it', () => {
    const rows = read(sectionCsv(three));
    expect(rows).toHaveLength(3);
    expect(rows[0]).toMatchObject({
      ...{ take: 'take-0', player: 'Ada', date: '2026-03-02', outcome: 'reviewed' },
      ...{ tempo_quarter_bpm: '92.14', tuning_cents_from_a440: '4.3', notes_as_written: '142', notes_in_part: '144' },
      ...{ notes_fix: '1', notes_watch: '0', intonation_watch: '1' },
    });
    expect(rows[2]).toMatchObject({
      outcome: 'not-this-score',
      notes_as_written: 'not measured',
      notes_fix: 'not measured',
    });
    expect(sectionCsv(three).replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  // Source: OWASP, "CSV Injection": cells that begin with = + - @ tab or carriage return are run by spreadsheets.
  it('lets no text become a formula, and loses nothing of it', () => {
    const hostile = fc
      .tuple(fc.constantFrom('=', '+', '-', '@', '\t', '\r', 'a', '"', ','), fc.string())
      .map(([first, rest]) => first + rest);
    fc.assert(
      fc.property(hostile, hostile, (player, file) => {
        const [take] = three.takes;
        if (take === undefined) throw new Error('no take');
        const [row] = read(sectionCsv({ ...three, takes: [{ ...take, player, file, first: [player] }] }));
        for (const [cell, text] of [
          [row?.player, player],
          [row?.file, file],
          [row?.first, player],
        ]) {
          expect(cell).not.toMatch(/^[=+\-@\t\r]/);
          expect(cell?.replace(/^'(?=[=+\-@\t\r])/, '')).toBe(text);
        }
      }),
    );
  });

  it('leaves a negative number a number', () => {
    const [take] = three.takes;
    if (take === undefined) throw new Error('no take');
    const [row] = read(sectionCsv({ ...three, takes: [{ ...take, centsFromA440: -12.3 }] }));
    expect(row?.tuning_cents_from_a440).toBe('-12.3');
  });
});
