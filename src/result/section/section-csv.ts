import { byCodePoint, isMeasured, type MaybeNumberTold } from '../../base/index.js';
import type { Criterion } from '../../judge/index.js';
import { CSV_WORDS } from '../../words/index.js';
import { criterionSchema } from '../schema/take-result-schema.js';
import { csvText, textCell } from './csv-text.js';
import type { SectionFailure, SectionResult, SectionTake } from './section-result-schema.js';

const HEADS = [
  ...['take', 'file', 'player', 'date', 'instrument', 'score', 'outcome'],
  ...['tempo_quarter_bpm', 'tuning_cents_from_a440', 'notes_as_written', 'notes_in_part'],
  ...['points_given', 'points_possible'],
  ...criterionSchema.options.flatMap((criterion) => [`${criterion}_fix`, `${criterion}_watch`]),
  ...['first', 'second', 'third', 'failure'],
];

/**
 * One row a take under one row of heads, in the order of names; takes that could not be reviewed have theirs, too. A cell
 * never holds 0 for what was not judged or not measured: it says so in words. Further columns of a roster come last.
 *
 * @param section the section's document
 * @returns CSV text, lines end in CR LF; a byte order mark in front tells spreadsheets that it is UTF-8
 *
 * Source: RFC 4180; OWASP, "CSV Injection", for the characters guarded.
 */
export function sectionCsv(section: SectionResult): string {
  const rows = [
    ...section.takes.map((take) => ({ name: take.name, cells: row(take), roster: take.roster ?? {} })),
    ...section.failures.map((failure) => ({
      ...{ name: failure.name ?? failure.file, cells: failedRow(failure), roster: failure.roster ?? {} },
    })),
  ];
  rows.sort((a, b) => byCodePoint(a.name, b.name));
  const further = [...new Set(rows.flatMap(({ roster }) => Object.keys(roster)))];
  const heads = [...HEADS, ...further.map((head) => textCell(HEADS.includes(head) ? `roster_${head}` : head))];
  return csvText([
    heads,
    ...rows.map(({ cells, roster }) => [...cells, ...further.map((head) => textCell(roster[head] ?? ''))]),
  ]);
}

function row(take: SectionTake): string[] {
  return [
    textCell(take.name),
    textCell(take.file),
    textCell(take.player ?? ''),
    textCell(take.date ?? ''),
    textCell(take.instrument ?? ''),
    textCell(take.score),
    take.outcome,
    number(take.playedQuarterBpm),
    number(take.centsFromA440),
    number(take.notesAsWritten),
    String(take.notesInPart),
    String(take.points?.given ?? ''),
    String(take.points?.possible ?? ''),
    ...criterionSchema.options.flatMap((criterion) => counts(take, criterion)),
    ...[0, 1, 2].map((i) => textCell(take.first[i] ?? '')),
    '',
  ];
}

function failedRow(failure: SectionFailure): string[] {
  const known = [
    textCell(failure.name ?? failure.file),
    textCell(failure.file),
    textCell(failure.player ?? ''),
    textCell(failure.date ?? ''),
    textCell(failure.instrument ?? ''),
    '',
    'failed',
  ];
  const unknown = HEADS.slice(known.length, -4).map(() => CSV_WORDS.notMeasured);
  return [...known, ...unknown, '', '', '', textCell(`${failure.code}: ${failure.message}`)];
}

function counts(take: SectionTake, criterion: Criterion): string[] {
  const line = take.criteria.find((one) => one.criterion === criterion);
  if (line !== undefined) return [String(line.fix), String(line.watch)];
  const word = take.outcome === 'reviewed' ? CSV_WORDS.notJudged : CSV_WORDS.notMeasured;
  return [word, word];
}

const number = (value: MaybeNumberTold) => (isMeasured<number>(value) ? String(value) : CSV_WORDS.notMeasured);
