/**
 * Paths that are built or moved have their points on a grid of 1/100 point: what is measured is what is drawn, and the same
 * on paper and in a browser.
 *
 * @param value points
 * @returns the nearest value of the grid
 */
export function onGrid(value: number): number {
  // −0 becomes 0
  return Math.round(value * 100) / 100 + 0;
}
