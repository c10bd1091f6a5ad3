import type { Part, PerformedBar } from '../../score/index.js';

/** A row of bars that share one axis. */
export interface BarRow {
  readonly bars: readonly PerformedBar[];
  readonly fromQuarters: number;
  readonly toQuarters: number;
  /** points a quarter; `x = left + (quarters - fromQuarters) * scale` */
  readonly scale: number;
}

/** More bars than this in a row leave no room for their dynamics. */
const MOST_BARS = 48;

/**
 * Breaks the performed bars into rows of about equal length, all on one scale.
 *
 * @param part the part as performed
 * @param width points a row may take
 * @returns rows in performed order, none for a part without bars
 */
export function barRows(part: Part, width: number): BarRow[] {
  const { bars } = part;
  const rows = Math.ceil(bars.length / MOST_BARS);
  const perRow = Math.ceil(bars.length / Math.max(1, rows));
  const groups = Array.from({ length: rows }, (_, row) => bars.slice(row * perRow, (row + 1) * perRow));
  const spans = groups.flatMap((group) => {
    const first = group[0];
    const last = group.at(-1);
    if (first === undefined || last === undefined) return [];
    return [{ bars: group, fromQuarters: first.startQuarters, toQuarters: last.startQuarters + last.lengthQuarters }];
  });
  const longest = Math.max(...spans.map((span) => span.toQuarters - span.fromQuarters));
  return spans.map((span) => ({ ...span, scale: width / longest }));
}

/**
 * @param row a row of bars
 * @param leastDistance points between the bars' numbers
 * @returns the bars whose number is printed: the row's first, then those whose number is a multiple of a round step, and
 * where a repeat jumps back
 */
export function numberedBars(row: BarRow, leastDistance: number): PerformedBar[] {
  const widest = (row.toQuarters - row.fromQuarters) * row.scale;
  const barWidth = widest / row.bars.length;
  const step = [1, 2, 4, 5, 10, 20, 50, 100].find((bars) => bars * barWidth >= leastDistance) ?? 100;
  const numbered: PerformedBar[] = [];
  for (const [i, bar] of row.bars.entries()) {
    const before = row.bars[i - 1];
    const jumps = before !== undefined && bar.barIndex !== before.barIndex + 1;
    const wanted = i === 0 || jumps || numberOf(bar) % step === 0;
    const last = numbered.at(-1);
    const free = last === undefined || (bar.startQuarters - last.startQuarters) * row.scale >= leastDistance;
    if (wanted && free) numbered.push(bar);
  }
  return numbered;
}

/** The printed number, or the place in the part where the print has a letter. */
function numberOf(bar: PerformedBar): number {
  const number = Number(bar.bar);
  return Number.isInteger(number) ? number : bar.barIndex + 1;
}
