import { InputError } from '../../base/index.js';
import { criterionSchema, type PanelMark } from '../../result/index.js';
import { readTable } from '../plan/read-table.js';

const COLUMNS = ['take', 'judge', 'criterion', 'points'] as const;

/**
 * Reads the marks of a panel: a table with the heads `take`, `judge`, `criterion` and `points`, in any order, and a line a mark.
 * A take is named as the results name it, which is its number where names are hidden, or by its player. Where commas do not part
 * the cells points may have a decimal comma.
 *
 * @param bytes a table as spreadsheets save it
 * @returns the marks in order
 * @throws InputError `bad-roster`: the line, and what is needed; it repeats no cell, which may be a name
 */
export function readMarks(bytes: Uint8Array): PanelMark[] {
  const rows = readTable(bytes).filter(({ cells }) => cells.some((cell) => cell !== ''));
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
