import { InputError } from '../../base/index.js';
import { realDay } from './real-day.js';

/** In which order day, month and year are written. */
export type DateOrder = 'dmy' | 'mdy' | 'ymd';

/** A cell that holds a day, and its line in the file. */
export interface DateCell {
  readonly line: number;
  readonly text: string;
}

const ORDERS: readonly DateOrder[] = ['dmy', 'mdy', 'ymd'];
/** Three numbers with one sign between them; a time of day, as spreadsheets add one, is passed over. */
const WRITTEN = /^(\d{1,4})([-./ ]|\. )(\d{1,2})\2(\d{1,4})\.?(?:[ T]\d{1,2}:\d{2}(?::\d{2})?)?$/;
const SHORT = /^(\d{4})(\d{2})(\d{2})$/;

/**
 * Reads a column of days. A year of four digits in front says the order by itself; for the rest it is the one given, or the
 * only one in which every cell is a day.
 *
 * @param cells of the column; empty ones are no day
 * @param order as the user has said, undefined when it is to be learnt
 * @returns ISO 8601 days in the order of the cells, empty for empty cells
 * @throws InputError `bad-roster` when a cell is no day in the order of the others, or when cells can be read in two ways
 *
 * Source: ISO 8601; Unicode CLDR, date formats: where dots part the numbers, the month does not come first.
 */
export function readDates(cells: readonly DateCell[], order?: DateOrder): string[] {
  const read = cells.map(({ line, text }) => ({ line, isEmpty: text === '', ...readingsOf(text) }));
  const open = read.filter(({ isEmpty, yearFirst }) => !isEmpty && !yearFirst);
  const chosen = order ?? learnt(open);
  return read.map(({ line, isEmpty, yearFirst, days }) => {
    if (isEmpty) return '';
    const day = days.get(yearFirst ? 'ymd' : chosen);
    if (day === undefined) throw new InputError('roster-no-day', { line });
    return day;
  });
}

/** What the numbers of a cell may mean. */
interface Readings {
  readonly yearFirst: boolean;
  readonly dotted: boolean;
  readonly days: ReadonlyMap<DateOrder, string>;
}

/** The order in which all cells are days. */
function learnt(cells: readonly (Readings & { readonly line: number })[]): DateOrder {
  let fitting = [...ORDERS];
  for (const { line, days, dotted } of cells) {
    fitting = fitting.filter((order) => days.has(order) && !(dotted && order === 'mdy'));
    if (fitting.length === 0) throw new InputError('roster-no-day', { line });
  }
  const unclear = cells.find(({ days }) => new Set(fitting.map((order) => days.get(order))).size > 1);
  if (unclear === undefined) return fitting[0] as DateOrder;
  const days = fitting.map((order) => unclear.days.get(order) as string);
  throw new InputError('roster-days-unclear', { line: unclear.line, days, orders: fitting });
}

function readingsOf(text: string): Readings {
  const short = SHORT.exec(text);
  const [, a = '', sign = '', b = '', c = ''] =
    short === null ? (WRITTEN.exec(text) ?? []) : [text, short[1], '', short[2], short[3]];
  const days = new Map<DateOrder, string>();
  const add = (order: DateOrder, year: string, month: string, day: string): void => {
    const fits = (year.length === 4 || year.length === 2) && month.length <= 2 && day.length <= 2;
    const real = fits ? realDay(full(year), pair(month), pair(day)) : null;
    if (real !== null) days.set(order, real);
  };
  add('dmy', c, b, a);
  add('mdy', c, a, b);
  add('ymd', a, b, c);
  return { yearFirst: a.length === 4, dotted: sign.startsWith('.'), days };
}

const pair = (number: string): string => number.padStart(2, '0');
/** Source: common practice: takes are of this century. */
const full = (year: string): string => (year.length === 2 ? `20${year}` : year);
