import { CsvError, parse } from 'csv-parse/sync';
import { InputError } from '../../base/index.js';
import { criterionSchema, type PanelMark } from '../../result/index.js';

const COLUMNS = ['take', 'judge', 'criterion', 'points'] as const;

/**
 * Reads the marks of a panel: a table with the heads `take`, `judge`, `criterion` and `points`, in any order, and a line a mark.
 * A take is named as the results name it, which is its number where names are hidden, or by its player. Commas or semicolons part
 * the cells; with semicolons points may have a decimal comma.
 *
 * @param bytes UTF-8, with or without a byte order mark
 * @returns the marks in order
 * @throws InputError `bad-roster`: the line, and what is needed; it repeats no cell, which may be a name
 *
 * Source: RFC 4180; semicolons as spreadsheets write them where the comma is the decimal sign (common practice).
 */
export function readMarks(bytes: Uint8Array): PanelMark[] {
  const rows = cellsOf(decoded(bytes));
  const heads = rows[0]?.cells.map((cell) => cell.toLowerCase()) ?? [];
  if (!COLUMNS.every((column) => heads.includes(column))) throw new InputError('marks-heads', { columns: COLUMNS });
  return rows.slice(1).map(({ cells, line }): PanelMark => {
    const [take, judge, name, number] = COLUMNS.map((column) => cells[heads.indexOf(column)] ?? '') as [
      string,
      string,
      string,
      string,
    ];
    const criterion = criterionSchema.safeParse(name.toLowerCase());
    const points = /^\d{1,4}(?:[.,]\d{1,3})?$/.test(number) ? Number(number.replace(',', '.')) : Number.NaN;
    if (take === '' || judge === '' || !criterion.success || !Number.isFinite(points)) {
      throw new InputError('marks-line', { line, criteria: criterionSchema.options });
    }
    return { take, judge, criterion: criterion.data, points };
  });
}

function decoded(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new InputError('roster-no-utf8');
  }
}

function cellsOf(text: string): { readonly cells: readonly string[]; readonly line: number }[] {
  const firstLine = /^[^\r\n]*/.exec(text)?.[0] ?? '';
  const delimiter = firstLine.split(';').length > firstLine.split(',').length ? ';' : ',';
  try {
    const options = { delimiter, info: true, relax_column_count: true, skip_empty_lines: true, trim: true } as const;
    const records = parse(text, options) as unknown as { record: string[]; info: { lines: number } }[];
    return records
      .map(({ record, info }) => ({ cells: record.map((cell) => cell.normalize('NFC')), line: info.lines }))
      .filter(({ cells }) => cells.some((cell) => cell !== ''));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw new InputError('roster-quotes', { line: 'lines' in error ? Number(error.lines) : 1 });
  }
}
