import { type Path, POINTS_OF_STEP } from '../path/path.js';
import { numberInMarkup } from './number-in-markup.js';

/**
 * @param path of any form
 * @returns the path as SVG path data
 *
 * Source: SVG 2, path data.
 */
export function pathData({ steps, points }: Path): string {
  let next = 0;
  let data = '';
  for (const step of steps) {
    const end = next + 2 * POINTS_OF_STEP[step];
    data += step + points.slice(next, end).map(numberInMarkup).join(' ');
    next = end;
  }
  return data;
}
