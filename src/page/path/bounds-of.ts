import type { Path } from './path.js';
import { pointsAlong } from './points-along.js';

/** The smallest upright box around something, points. */
export interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/**
 * @param path of any form
 * @returns the box around the points it goes through; infinite and inside out for a path that draws nothing
 */
export function boundsOf(path: Path): Bounds {
  let [left, right] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  let [top, bottom] = [left, right];
  for (const line of pointsAlong(path)) {
    for (const [x, y] of line) {
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
    }
  }
  return { left, right, top, bottom };
}
