import { onGrid } from './on-grid.js';
import type { Path, Point, Step } from './path.js';

/**
 * @param through x and y in points; a NaN in y breaks the line
 * @returns the line through the points, on the grid
 */
export function lineThrough(through: readonly Point[]): Path {
  const steps: Step[] = [];
  const points: number[] = [];
  let drawing = false;
  for (const [x, y] of through) {
    if (Number.isNaN(y)) {
      drawing = false;
      continue;
    }
    steps.push(drawing ? 'L' : 'M');
    points.push(onGrid(x), onGrid(y));
    drawing = true;
  }
  return { steps, points };
}
