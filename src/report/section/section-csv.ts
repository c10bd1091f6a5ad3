import { stringify } from 'csv-stringify/sync';
import { isMeasured, type MaybeNumber } from '../../base/index.js';
import type { Criterion } from '../../judge/index.js';
import { criterionSchema } from '../result/take-result-schema.js';
import type { SectionResult, SectionTake } from './section-result-schema.js';

const NOT_MEASURED = 'not measured';

/**
 * One row a take under one row of heads. Text that a spreadsheet would run as a formula gets an apostrophe in front.
 *
 * @param section the section's document
 * @returns CSV text, lines end in CR LF; a byte order mark in front tells spreadsheets that it is UTF-8
 *
 * Source: RFC 4180; OWASP, "CSV Injection", for the characters guarded.
 */
export function sectionCsv(section: SectionResult): string {
  const heads = [
    ...['take', 'file', 'player', 'date', 'outcome', 'tempo_quarter_bpm', 'tuning_cents_from_a440'],
    ...['notes_as_written', 'notes_in_part'],
    ...criterionSchema.options.flatMap((criterion) => [`${criterion}_fix`, `${criterion}_watch`]),
    ...['first', 'second', 'third'],
  ];
  return stringify([heads, ...section.takes.map(row)], { record_delimiter: 'windows', bom: true });
}

function row(take: SectionTake): string[] {
  return [
    guarded(take.name),
    guarded(take.file),
    guarded(take.player ?? ''),
    guarded(take.date ?? ''),
    take.outcome,
    number(take.playedQuarterBpm),
    number(take.centsFromA440),
    number(take.notesAsWritten),
    String(take.notesInPart),
    ...criterionSchema.options.flatMap((criterion) => counts(take, criterion)),
    ...[0, 1, 2].map((i) => guarded(take.first[i] ?? '')),
  ];
}

function counts(take: SectionTake, criterion: Criterion): string[] {
  const line = take.criteria.find((one) => one.criterion === criterion);
  return line === undefined ? [NOT_MEASURED, NOT_MEASURED] : [String(line.fix), String(line.watch)];
}

const number = (value: MaybeNumber) => (isMeasured(value) ? String(value) : NOT_MEASURED);

const guarded = (text: string) => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text);
