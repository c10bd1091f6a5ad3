import { CsvError, parse } from 'csv-parse/sync';
import { InputError } from '../../base/index.js';
import { realDay } from './real-day.js';

const COLUMNS = ['file', 'player', 'date', 'instrument', 'part'] as const;
type Column = (typeof COLUMNS)[number];

/** One line of a roster; what is not said is empty. */
export type RosterLine = { readonly line: number } & { readonly [column in Column]: string };

/**
 * Reads a roster: a table with a line of heads (`file` and any of `player`, `date`, `instrument`, `part`, in any order),
 * and a line a take. Commas or semicolons part the cells.
 *
 * @param bytes UTF-8, with or without a byte order mark
 * @returns its lines, in order
 * @throws InputError `bad-roster`: the line, what stands there and what is needed; it repeats no cell, which may be a name
 *
 * Source: RFC 4180; semicolons as spreadsheets write them where the comma is the decimal sign (common practice).
 */
export function readRoster(bytes: Uint8Array): RosterLine[] {
  const text = decoded(bytes);
  const [heads, ...rows] = cellsOf(text);
  if (heads === undefined) throw new InputError('roster-empty', { line: 1, columns: COLUMNS });
  const columns = columnsOf(heads.cells);
  return rows
    .filter(({ cells }) => cells.some((cell) => cell !== ''))
    .map(({ cells, line }) => {
      if (cells.length > columns.length && cells.slice(columns.length).some((cell) => cell !== '')) {
        throw new InputError('roster-many-cells', { line, cells: cells.length, heads: columns.length });
      }
      const read = (column: Column): string => cells[columns.indexOf(column)] ?? '';
      return {
        line,
        file: fileIn(read('file'), line),
        player: read('player'),
        date: dayIn(read('date'), line),
        instrument: read('instrument'),
        part: read('part'),
      };
    });
}

function decoded(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new InputError('roster-no-utf8');
  }
}

function cellsOf(text: string): { cells: string[]; line: number }[] {
  const firstLine = /^[^\r\n]*/.exec(text)?.[0] ?? '';
  const delimiter = firstLine.split(';').length > firstLine.split(',').length ? ';' : ',';
  try {
    const records = parse(text, {
      delimiter,
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
    });
    return (records as unknown as { record: string[]; info: { lines: number } }[]).map(({ record, info }) => ({
      cells: record.map((cell) => cell.normalize('NFC').trim()),
      line: info.lines,
    }));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = 'lines' in error ? Number(error.lines) : 1;
    throw new InputError('roster-quotes', { line });
  }
}

function columnsOf(heads: readonly string[]): string[] {
  const columns = heads.map((head) => head.toLowerCase());
  while (columns.at(-1) === '') columns.pop();
  const place = columns.findIndex((column) => !(COLUMNS as readonly string[]).includes(column));
  if (place >= 0) throw new InputError('roster-head-unknown', { line: 1, place: place + 1, columns: COLUMNS });
  if (!columns.includes('file')) throw new InputError('roster-head-missing', { line: 1, columns: COLUMNS });
  if (new Set(columns).size < columns.length) throw new InputError('roster-head-twice', { line: 1 });
  return columns;
}

function fileIn(file: string, line: number): string {
  if (file === '') throw new InputError('roster-no-file', { line });
  return file.replaceAll('\\', '/').replace(/^\.\//, '');
}

function dayIn(date: string, line: number): string {
  if (date === '') return '';
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  const day = found === null ? null : realDay(found[1], found[2], found[3]);
  if (day === null) throw new InputError('roster-no-day', { line });
  return day;
}
