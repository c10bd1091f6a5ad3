import { lineThrough } from './line-through.js';
import type { Path } from './path.js';

/**
 * @param y height, points
 * @param from where it begins, points
 * @param to where it ends, points
 * @returns a level line, on the grid
 */
export function lineAcross(y: number, from: number, to: number): Path {
  return lineThrough([
    [from, y],
    [to, y],
  ]);
}
