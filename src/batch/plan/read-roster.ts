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
  if (heads === undefined) throw fault(1, `the file is empty; a line of heads is needed: ${COLUMNS.join(',')}`);
  const columns = columnsOf(heads.cells);
  return rows
    .filter(({ cells }) => cells.some((cell) => cell !== ''))
    .map(({ cells, line }) => {
      if (cells.length > columns.length && cells.slice(columns.length).some((cell) => cell !== '')) {
        throw fault(
          line,
          `there are ${cells.length} cells, and ${columns.length} heads; put quotes around a cell with a comma in it`,
        );
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
    throw new InputError('bad-roster', 'this is not UTF-8; save it as “CSV UTF-8”');
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
    throw fault(line, 'the quotes of a cell do not match; close them, and double those inside a cell');
  }
}

function columnsOf(heads: readonly string[]): string[] {
  const columns = heads.map((head) => head.toLowerCase());
  while (columns.at(-1) === '') columns.pop();
  const place = columns.findIndex((column) => !(COLUMNS as readonly string[]).includes(column));
  if (place >= 0) throw fault(1, `head ${place + 1} is not known; there are ${COLUMNS.join(', ')}`);
  if (!columns.includes('file')) throw fault(1, `the head “file” is missing; there are ${COLUMNS.join(', ')}`);
  if (new Set(columns).size < columns.length) throw fault(1, 'a head stands there twice');
  return columns;
}

function fileIn(file: string, line: number): string {
  if (file === '') throw fault(line, 'the cell under “file” is empty; it names the take');
  return file.replaceAll('\\', '/').replace(/^\.\//, '');
}

function dayIn(date: string, line: number): string {
  if (date === '') return '';
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  const day = found === null ? null : realDay(found[1], found[2], found[3]);
  if (day === null) throw fault(line, 'the cell under “date” is no day; write year-month-day, such as 2026-03-02');
  return day;
}

function fault(line: number, what: string): InputError {
  return new InputError('bad-roster', `line ${line}: ${what}`);
}
