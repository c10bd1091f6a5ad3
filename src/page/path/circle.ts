import { onGrid } from './on-grid.js';
import type { Path } from './path.js';
import { QUARTER } from './quarter.js';

/**
 * @param x centre, points
 * @param y centre, points
 * @param radius points
 * @returns a circle of four curves, from its leftmost point on; its extremes are on the grid
 *
 * Source: SVG 2, path data (cubic Bézier curves).
 */
export function circle(x: number, y: number, radius: number): Path {
  const [left, middle] = [onGrid(x - radius), onGrid(y)];
  const right = left + onGrid(2 * radius);
  const r = (right - left) / 2;
  const [centre, k] = [left + r, QUARTER * r];
  const [top, bottom] = [middle - r, middle + r];
  return {
    steps: ['M', 'C', 'C', 'C', 'C', 'Z'],
    points: [
      [left, middle],
      [left, middle + k, centre - k, bottom, centre, bottom],
      [centre + k, bottom, right, middle + k, right, middle],
      [right, middle - k, centre + k, top, centre, top],
      [centre - k, top, left, middle - k, left, middle],
    ].flat(),
  };
}
