import { lineThrough } from './line-through.js';
import type { Path, Point } from './path.js';

/**
 * @param corners x and y in points
 * @returns the area between the corners, on the grid
 */
export function areaOf(corners: readonly Point[]): Path {
  const { steps, points } = lineThrough(corners);
  return { steps: [...steps, 'Z'], points };
}
