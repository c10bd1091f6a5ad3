import { boundsOf } from '../page/index.js';
import type { Shape } from './read-shapes.js';

type Extent = readonly [left: number, right: number];

/** Signs of one kind share their outline. */
const known = new WeakMap<Shape['item'], Extent>();

/**
 * @param shape of an engraving
 * @returns x of its leftmost and rightmost point, points; of words, where they are anchored
 */
export function xExtent({ item, x }: Pick<Shape, 'item' | 'x'>): Extent {
  const [left, right] = known.get(item) ?? ofItem(item);
  known.set(item, [left, right]);
  return [left + x, right + x];
}

function ofItem(item: Shape['item']): Extent {
  if (item.kind === 'words') return [item.x, item.x];
  const { left, right } = boundsOf(item.path);
  return [left, right];
}
