import type { Item } from '../layout/drawing.js';
import { pathPoints } from './path-points.js';

/**
 * @param item what is drawn
 * @returns x of its leftmost and rightmost point, points; of a text, where it begins
 *
 * Source: definition.
 */
export function xExtent(item: Item): readonly [left: number, right: number] {
  if (item.kind === 'text') return [item.x, item.x];
  let [left, right] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const points of pathPoints(item.d)) {
    for (const [x] of points) {
      left = Math.min(left, x);
      right = Math.max(right, x);
    }
  }
  return [left, right];
}
