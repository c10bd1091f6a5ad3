/** A mark of one's own on a take. */
export interface OwnMark {
  readonly take: string;
  readonly criterion: string;
  readonly points: number;
  readonly word: string;
}

const HEADS = ['take', 'judge', 'criterion', 'points', 'word'] as const;

/**
 * @param judge who gave the marks
 * @param marks in order
 * @returns the panel's table as CSV
 *
 * Source: RFC 4180; a cell that a spreadsheet would take for a formula begins with an apostrophe.
 */
export function marksTable(judge: string, marks: readonly OwnMark[]): string {
  const rows = marks.map(({ take, criterion, points, word }) => [
    take,
    said(judge),
    criterion,
    String(points),
    said(word),
  ]);
  return [HEADS, ...rows].map((row) => `${row.map(quoted).join(',')}\r\n`).join('');
}

/**
 * @param text as it was typed
 * @returns the mark, or null when the text is none
 */
export function readMark(text: string): number | null {
  const trimmed = text.trim();
  return /^\d{1,4}(?:[.,]\d{1,3})?$/.test(trimmed) ? Number(trimmed.replace(',', '.')) : null;
}

const said = (text: string): string => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text);

const quoted = (cell: string): string => (/[",\r\n;]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
