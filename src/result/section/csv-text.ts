import { stringify } from 'csv-stringify/sync';
import { printable } from '../../base/index.js';

/** What spreadsheets run as a formula when a cell begins with it, also in their wide forms; an apostrophe shields it. */
const RUN_BY_SPREADSHEETS = /^'*[=+\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20]/;

/**
 * @param rows cells row by row, the heads first; text of users goes through {@link textCell}
 * @returns CSV text, lines end in CR LF; a byte order mark in front tells spreadsheets that it is UTF-8
 *
 * Source: RFC 4180.
 */
export function csvText(rows: readonly (readonly string[])[]): string {
  return stringify(rows as string[][], { record_delimiter: 'windows', bom: true });
}

/**
 * @param text anything a user or a file name may say
 * @returns the same for a cell on one line, without what a terminal obeys; what a spreadsheet would run is shielded
 */
export function textCell(text: string): string {
  return exactCell(printable(text));
}

/**
 * @param text anything a user or a file name may say
 * @returns the same, letter by letter, for a cell: what a spreadsheet would run as a formula gets an apostrophe in front
 *
 * Source: OWASP, "CSV Injection", for the characters guarded.
 */
export function exactCell(text: string): string {
  return RUN_BY_SPREADSHEETS.test(text) ? `'${text}` : text;
}

/**
 * @param cell what {@link exactCell} has given
 * @returns the text it was made from
 */
export function cellText(cell: string): string {
  return cell.startsWith("'") && RUN_BY_SPREADSHEETS.test(cell) ? cell.slice(1) : cell;
}
