import { joinPaths, lineAcross, lineThrough, type Path } from '../../page/index.js';
import type { BarRow } from './bar-rows.js';

const TICK = 2.5;

/**
 * @param row a row of bars
 * @param xOf where a time of the part stands, points
 * @param foot height of the axis, points
 * @returns a level line with a tick downwards where each bar begins
 */
export function barAxis(row: BarRow, xOf: (quarters: number) => number, foot: number): Path {
  const ticks = row.bars.map(({ startQuarters }) =>
    lineThrough([
      [xOf(startQuarters), foot],
      [xOf(startQuarters), foot + TICK],
    ]),
  );
  return joinPaths([lineAcross(foot, xOf(row.fromQuarters), xOf(row.toQuarters)), ...ticks]);
}
