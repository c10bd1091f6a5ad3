import type { Path } from './path.js';
import { QUARTER } from './quarter.js';

/**
 * @param x centre, any unit
 * @param y centre
 * @param rx half width
 * @param ry half height
 * @returns an ellipse of four curves, not brought to the grid: it is moved to its place by `mapPath`
 *
 * Source: SVG 2, path data (cubic Bézier curves).
 */
export function ellipse(x: number, y: number, rx: number, ry: number): Path {
  const [kx, ky] = [rx * QUARTER, ry * QUARTER];
  return {
    steps: ['M', 'C', 'C', 'C', 'C', 'Z'],
    points: [
      [x + rx, y],
      [x + rx, y + ky, x + kx, y + ry, x, y + ry],
      [x - kx, y + ry, x - rx, y + ky, x - rx, y],
      [x - rx, y - ky, x - kx, y - ry, x, y - ry],
      [x + kx, y - ry, x + rx, y - ky, x + rx, y],
    ].flat(),
  };
}
