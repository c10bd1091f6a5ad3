import { onGrid } from './on-grid.js';
import type { Path, Point } from './path.js';

/**
 * @param path of any form
 * @param map where a point goes, points
 * @returns the same steps with every point moved and brought to the grid; curves keep the form their control points give
 */
export function mapPoints({ steps, points }: Path, map: (x: number, y: number) => Point): Path {
  const moved = new Array<number>(points.length);
  for (let i = 0; i < points.length; i += 2) {
    const [x, y] = map(points[i] as number, points[i + 1] as number);
    moved[i] = onGrid(x);
    moved[i + 1] = onGrid(y);
  }
  return { steps, points: moved };
}
