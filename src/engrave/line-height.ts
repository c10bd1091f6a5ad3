import type { PathItem } from '../page/index.js';

/**
 * @param line a staff line
 * @returns the height at which it begins, points
 */
export function lineHeight({ path }: PathItem): number {
  return path.points[1] ?? 0;
}
