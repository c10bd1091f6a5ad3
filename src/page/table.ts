import type { DrawingElement, Link, PageMarks } from './drawing.js';
import { linked } from './linked.js';
import type { Path } from './path/path.js';
import { placeText, type SetText, type TextStyle } from './set-text.js';
import type { Sheet } from './sheet.js';
import { STYLES } from './styles.js';

/** One column. */
export interface Column {
  readonly head: string;
  /** points, the white to the next column included */
  readonly width: number;
  readonly align?: 'left' | 'right' | 'centre';
  /** the cells of this column name their rows */
  readonly namesRow?: boolean;
  /** white after the cells, points; wider where numbers are followed by words */
  readonly gap?: number;
}

/** A cell's text, how it is set when not in the plain way, and where it leads. */
export type Cell = string | { readonly text: string; readonly style?: TextStyle; readonly link?: Link };

const CELL_GAP = 9;
const ROW_PADDING = 2.6;
const RULE = 0.5;

/**
 * Draws a table from the current height on. Rows are never split when they fit a page; the heads come again on each page.
 *
 * @param sheet pages being filled; the table stands at its left edge
 * @param columns heads and widths, points
 * @param rows cells, one a column
 *
 * Source: ISO 32000-1, 14.8.4.3.4, for the structure (Table, TR, TH, TD).
 */
export function drawTable(sheet: Sheet, columns: readonly Column[], rows: readonly (readonly Cell[])[]): void {
  const heads = columns.map((column) => setCell(sheet, column, { text: column.head, style: STYLES.head }));
  const headHeight = Math.max(...heads.map((set) => set.height)) + ROW_PADDING;
  const sets = rows.map((row) => columns.map((column, i) => setCell(sheet, column, row[i] ?? '')));
  sheet.ensure(headHeight + heightOf(sets[0] ?? []));
  const children: DrawingElement[] = [];
  children.push({
    tag: 'TR',
    children: placed(sheet, columns, heads, sheet.y).map((marks, i) => {
      const actual = heads[i]?.actualText;
      return { tag: 'TH', scope: 'Column', ...(actual === undefined ? {} : { actualText: actual }), children: [marks] };
    }),
  });
  underline(sheet, columns, headHeight, 'accent');
  for (const [row, set] of sets.entries()) {
    const height = heightOf(set);
    if (sheet.ensure(height)) repeatHeads(sheet, columns, heads, headHeight);
    const cells = placed(sheet, columns, set, sheet.y + ROW_PADDING);
    children.push({
      tag: 'TR',
      children: cells.map((marks, i) => {
        const left = sheet.left + columns.slice(0, i).reduce((sum, { width }) => sum + width, 0);
        const box = [left, sheet.y, left + (columns[i]?.width ?? 0) - CELL_GAP, sheet.y + height] as const;
        const cell = rows[row]?.[i];
        const link = typeof cell === 'object' ? cell.link : undefined;
        return cellElement(columns[i] as Column, set[i] as SetText, linked(marks, link, box));
      }),
    });
    underline(sheet, columns, height, 'rule');
  }
  sheet.elements.push({ tag: 'Table', children });
}

/**
 * @param sheet for widths
 * @param columns heads and widths, points
 * @param rows cells, one a column
 * @returns points the table takes on one page
 */
export function tableHeight(sheet: Sheet, columns: readonly Column[], rows: readonly (readonly Cell[])[]): number {
  const heads = columns.map((column) => setCell(sheet, column, { text: column.head, style: STYLES.head }));
  const heights = rows.map((row) => heightOf(columns.map((column, i) => setCell(sheet, column, row[i] ?? ''))));
  return Math.max(...heads.map((set) => set.height)) + ROW_PADDING + heights.reduce((sum, height) => sum + height, 0);
}

function setCell(sheet: Sheet, column: Column, cell: Cell): SetText {
  const { text, style = STYLES.cell } = typeof cell === 'string' ? { text: cell } : cell;
  return sheet.set(text, { ...style, align: column.align ?? 'left' }, column.width - (column.gap ?? CELL_GAP));
}

function heightOf(sets: readonly SetText[]): number {
  return Math.max(0, ...sets.map((set) => set.height)) + 2 * ROW_PADDING;
}

function placed(sheet: Sheet, columns: readonly Column[], sets: readonly SetText[], top: number): PageMarks[] {
  let x = sheet.left;
  return columns.map((column, i) => {
    const items = placeText(sets[i] as SetText, x, top);
    x += column.width;
    return { page: sheet.page, items };
  });
}

function cellElement(column: Column, set: SetText, marks: DrawingElement | PageMarks): DrawingElement {
  const actual = set.actualText === undefined ? {} : { actualText: set.actualText };
  if (column.namesRow === true) return { tag: 'TH', scope: 'Row', ...actual, children: [marks] };
  return { tag: 'TD', ...actual, children: [marks] };
}

function repeatHeads(sheet: Sheet, columns: readonly Column[], heads: readonly SetText[], height: number): void {
  sheet.furnish(placed(sheet, columns, heads, sheet.y).flatMap((marks) => marks.items));
  underline(sheet, columns, height, 'accent');
}

/** Moves below a row and draws the rule under it. */
function underline(sheet: Sheet, columns: readonly Column[], height: number, ink: 'accent' | 'rule'): void {
  sheet.y += height;
  const right = sheet.left + columns.reduce((sum, column) => sum + column.width, 0) - CELL_GAP;
  // not brought to the grid: a rule stands exactly where its row ends
  const path: Path = { steps: ['M', 'L'], points: [sheet.left, sheet.y, right, sheet.y] };
  sheet.furnish([{ kind: 'path', path, stroke: ink, width: ink === 'accent' ? 0.8 : RULE }]);
}
