import type { Item } from '../page/index.js';
import { mapPath } from './map-path.js';
import { movePoints } from './move-points.js';

/** Commands whose numbers are not pairs of places. Source: SVG 2, path data. */
const OTHER_COMMANDS = /[HVa-z]/;

/**
 * @param items what to draw
 * @param x points to the right
 * @param y points down
 * @returns the same moved
 *
 * Source: definition.
 */
export function shifted(items: readonly Item[], x: number, y: number): Item[] {
  return items.map((item) =>
    item.kind === 'text'
      ? { ...item, x: item.x + x, baseline: item.baseline + y }
      : { ...item, d: shiftedPath(item.d, x, y) },
  );
}

function shiftedPath(d: string, x: number, y: number): string {
  if (OTHER_COMMANDS.test(d)) return mapPath(d, [1, 0, 0, 1, x, y]);
  return movePoints(d, (px, py) => [px + x, py + y]);
}
