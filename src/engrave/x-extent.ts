import { pathPoints } from './path-points.js';
import type { Piece } from './svg-pieces.js';

type Extent = readonly [left: number, right: number];

/** Signs of one kind share their outline. */
const known = new WeakMap<Piece['item'], Extent>();

/**
 * @param piece of an engraving
 * @returns x of its leftmost and rightmost point, points; of words, where they are anchored
 *
 * Source: definition.
 */
export function xExtent({ item, x }: Pick<Piece, 'item' | 'x'>): Extent {
  const [left, right] = known.get(item) ?? ofItem(item);
  known.set(item, [left, right]);
  return [left + x, right + x];
}

function ofItem(item: Piece['item']): Extent {
  if (item.kind === 'words') return [item.x, item.x];
  let [left, right] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const points of pathPoints(item.d)) {
    for (const [x] of points) {
      left = Math.min(left, x);
      right = Math.max(right, x);
    }
  }
  return [left, right];
}
