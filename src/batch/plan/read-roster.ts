import { InputError } from '../../base/index.js';
import { type DateOrder, readDates } from './read-dates.js';
import { readTable } from './read-table.js';

const COLUMNS = ['file', 'player', 'date', 'instrument', 'part'] as const;
type Column = (typeof COLUMNS)[number];

/** One line of a roster; what is not said is empty. */
export type RosterLine = {
  readonly line: number;
  /** cells of further columns, by their heads as written; empty ones are left out */
  readonly further: Readonly<Record<string, string>>;
} & { readonly [column in Column]: string };

/** Heads that schools give these columns. Source: common practice, English and German. */
const ALSO: Readonly<Record<Column, readonly string[]>> = {
  file: ['recording', 'datei', 'aufnahme'],
  player: ['name', 'student', 'pupil', 'schüler', 'schülerin', 'spieler', 'spielerin'],
  date: ['day', 'datum', 'tag'],
  instrument: [],
  part: ['stimme'],
};

/** Letters of one cell: names, addresses and remarks are shorter. */
const LONGEST_CELL = 1000;

/**
 * Reads a roster: a table with a line of heads (`file` and any of `player`, `date`, `instrument`, `part`, in any order), and
 * a line a take. Further columns are kept as they are. Commas, semicolons or tabs part the cells.
 *
 * @param bytes UTF-8, with or without a byte order mark, or UTF-16 with one
 * @param order in which days are written; undefined when it is to be learnt from the column
 * @returns its lines, in order
 * @throws InputError `bad-roster`: the line, what stands there and what is needed; it repeats no cell, which may be a name
 *
 * Source: RFC 4180; semicolons as spreadsheets write them where the comma is the decimal sign, tabs in their Unicode text, a
 * first line `sep=;` that names the sign (common practice).
 */
export function readRoster(bytes: Uint8Array, order?: DateOrder): RosterLine[] {
  const [heads, ...rows] = readTable(bytes);
  if (heads === undefined) throw new InputError('roster-empty', { line: 1, columns: COLUMNS });
  const columns = columnsOf(heads.cells, heads.line);
  const lines = rows.filter(({ cells }) => cells.some((cell) => cell !== ''));
  for (const { cells, line } of lines) {
    if (cells.length > columns.length && cells.slice(columns.length).some((cell) => cell !== '')) {
      throw new InputError('roster-many-cells', { line, cells: cells.length, heads: columns.length });
    }
  }
  const long = rows.find(({ cells }) => cells.some((cell) => cell.length > LONGEST_CELL));
  if (long !== undefined) throw new InputError('roster-long-cell', { line: long.line, most: LONGEST_CELL });
  const place = (column: Column): number => columns.findIndex(({ known }) => known === column);
  const read = (cells: readonly string[], column: Column): string => cells[place(column)] ?? '';
  const days = readDates(
    lines.map(({ cells, line }) => ({ line, text: read(cells, 'date') })),
    order,
  );
  return lines.map(({ cells, line }, i) => ({
    line,
    file: fileIn(read(cells, 'file'), line),
    player: read(cells, 'player'),
    date: days[i] as string,
    instrument: read(cells, 'instrument'),
    part: read(cells, 'part'),
    further: furtherIn(cells, columns),
  }));
}

function furtherIn(cells: readonly string[], columns: readonly RosterColumn[]): Record<string, string> {
  const all = columns.map(({ known, head }, at) => ({ known, head, cell: cells[at] ?? '' }));
  const said = all.filter(({ known, cell }) => known === null && cell !== '');
  return Object.fromEntries(said.map(({ head, cell }) => [head, cell]));
}

/** A column: one of those that are known, or a further one with its head as written. */
interface RosterColumn {
  readonly known: Column | null;
  readonly head: string;
}

function columnsOf(written: readonly string[], line: number): RosterColumn[] {
  const heads = [...written];
  while (heads.at(-1) === '') heads.pop();
  const lower = heads.map((head) => head.toLowerCase());
  const empty = heads.indexOf('');
  if (empty >= 0) throw new InputError('roster-head-empty', { line, place: empty + 1 });
  if (new Set(lower).size < lower.length) throw new InputError('roster-head-twice', { line });
  const meant = new Map(
    COLUMNS.flatMap((column) => {
      const found = [column, ...ALSO[column]].find((head) => lower.includes(head));
      return found === undefined ? [] : [[found, column] as const];
    }),
  );
  const columns = heads.map((head, i) => ({ head, known: meant.get(lower[i] as string) ?? null }));
  if (!columns.some(({ known }) => known === 'file'))
    throw new InputError('roster-head-missing', { line, columns: COLUMNS });
  return columns;
}

function fileIn(file: string, line: number): string {
  if (file === '') throw new InputError('roster-no-file', { line });
  return file.replaceAll('\\', '/').replace(/^\.\//, '');
}
