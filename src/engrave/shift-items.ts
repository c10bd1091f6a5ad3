import { type Item, mapPoints } from '../page/index.js';

/**
 * @param items what to draw
 * @param x points to the right
 * @param y points down
 * @returns the same moved
 */
export function shifted(items: readonly Item[], x: number, y: number): Item[] {
  return items.map((item) =>
    item.kind === 'text'
      ? { ...item, x: item.x + x, baseline: item.baseline + y }
      : { ...item, path: mapPoints(item.path, (px, py) => [px + x, py + y]) },
  );
}
