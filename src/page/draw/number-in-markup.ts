import { onGrid } from '../path/on-grid.js';

/**
 * @param value points
 * @returns the number for an attribute of SVG, to 1/100 point
 *
 * Source: SVG 2, the syntax of numbers.
 */
export function numberInMarkup(value: number): string {
  return String(onGrid(value));
}
