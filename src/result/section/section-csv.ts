import { byCodePoint, isMeasured, type MaybeNumberTold } from '../../base/index.js';
import type { Criterion } from '../../judge/index.js';
import { CSV_WORDS } from '../../words/index.js';
import { FIRST_CRITERIA, LATER_CRITERIA } from '../schema/criterion-schema.js';

import { csvText, textCell } from './csv-text.js';
import type { SectionFailure, SectionResult, SectionTake } from './section-result-schema.js';

const HEADS = [
  ...['take', 'file', 'player', 'date', 'instrument', 'score', 'outcome'],
  ...['tempo_quarter_bpm', 'tuning_cents_from_a440', 'notes_as_written', 'notes_in_part'],
  ...['points_given', 'points_possible'],
  ...FIRST_CRITERIA.flatMap(countHeads),
  ...['first', 'second', 'third', 'failure'],
  // later columns come after the ones that were there before
  ...['bars_played', 'bars_to_play', 'ending', 'latest'],
  ...LATER_CRITERIA.flatMap(countHeads),
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
  // a take that the recorder cut off earns no points until a whole one is handed in
  const nothing = take.played?.ending === 'cut-off' ? CSV_WORDS.notJudged : '';
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
    String(take.points?.given ?? nothing),
    String(take.points?.possible ?? nothing),
    ...FIRST_CRITERIA.flatMap((criterion) => counts(take, criterion)),
    ...[0, 1, 2].map((i) => textCell(take.first[i] ?? '')),
    '',
    String(take.played?.played ?? CSV_WORDS.notMeasured),
    String(take.played?.of ?? CSV_WORDS.notMeasured),
    take.played?.ending ?? CSV_WORDS.notMeasured,
    take.latest === false ? 'no' : 'yes',
    ...LATER_CRITERIA.flatMap((criterion) => counts(take, criterion)),
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
  const told = ['', '', '', textCell(`${failure.code}: ${failure.message}`)];
  const unknown = HEADS.slice(known.length, HEADS.indexOf('first')).map(() => CSV_WORDS.notMeasured);
  const later = HEADS.slice(HEADS.indexOf('failure') + 1).map(() => CSV_WORDS.notMeasured);
  return [...known, ...unknown, ...told, ...later];
}

function countHeads(criterion: Criterion): string[] {
  return [`${criterion}_fix`, `${criterion}_watch`];
}

function counts(take: SectionTake, criterion: Criterion): string[] {
  const line = take.criteria.find((one) => one.criterion === criterion);
  if (line !== undefined) return [String(line.fix), String(line.watch)];
  if (take.notPlayed?.includes(criterion)) return [CSV_WORDS.notPlayed, CSV_WORDS.notPlayed];
  const word = take.outcome === 'reviewed' ? CSV_WORDS.notJudged : CSV_WORDS.notMeasured;
  return [word, word];
}

const number = (value: MaybeNumberTold) => (isMeasured<number>(value) ? String(value) : CSV_WORDS.notMeasured);
