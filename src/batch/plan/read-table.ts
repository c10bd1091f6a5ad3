import { CsvError, parse } from 'csv-parse/sync';
import { InputError } from '../../base/index.js';

const SEPARATOR_LINE = /^"?sep=(.)"?\r?\n/i;
const SEPARATORS = [',', ';', '\t'] as const;

/** A line of a table that holds anything, and where in the file it ends. */
export interface TableLine {
  readonly cells: readonly string[];
  readonly line: number;
}

/**
 * Reads a table as spreadsheets save it. Commas, semicolons or tabs part the cells, whichever the first line holds most of.
 *
 * @param bytes UTF-8, with or without a byte order mark, or UTF-16 with one
 * @returns its lines; cells without white space around them, letters composed
 * @throws InputError `bad-roster` where letters or quotes cannot be read
 *
 * Source: RFC 4180; semicolons as spreadsheets write them where the comma is the decimal sign, tabs in their Unicode text, a
 * first line `sep=;` that names the sign (common practice).
 */
export function readTable(bytes: Uint8Array): TableLine[] {
  const whole = decoded(bytes);
  const named = SEPARATOR_LINE.exec(whole);
  const text = whole.slice(named?.[0].length ?? 0);
  const firstLine = /^[^\r\n]*/.exec(text)?.[0] ?? '';
  const count = (sign: string): number => firstLine.split(sign).length;
  const likeliest = SEPARATORS.reduce((best, sign) => (count(sign) > count(best) ? sign : best));
  const delimiter = named?.[1] ?? likeliest;
  const before = named === null ? 0 : 1;
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
      line: info.lines + before,
    }));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = ('lines' in error ? Number(error.lines) : 1) + before;
    throw new InputError('roster-quotes', { line });
  }
}

/** Source: RFC 3629 and RFC 2781 for byte order marks. */
function decoded(bytes: Uint8Array): string {
  const isWide = bytes[0] === 0xff && bytes[1] === 0xfe;
  try {
    return new TextDecoder(isWide ? 'utf-16le' : 'utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new InputError('roster-no-utf8');
  }
}
