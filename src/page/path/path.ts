/**
 * One step of a path, named as in SVG path data: M moves, L draws a line, C a cubic curve, S a cubic curve that goes on
 * smoothly from the curve before it, and Z closes what was begun by the last M.
 */
export type Step = 'M' | 'L' | 'C' | 'S' | 'Z';

/** A line, curve or area, or several of them, as plain data. */
export interface Path {
  readonly steps: readonly Step[];
  /**
   * x and y of the points the steps go to, in points from the page's top left corner, one after the other: a step takes as
   * many as `POINTS_OF_STEP` says, control points first
   */
  readonly points: readonly number[];
}

/** How many points each step takes. Source: SVG 2, path data. */
export const POINTS_OF_STEP: Readonly<Record<Step, number>> = { M: 1, L: 1, C: 3, S: 2, Z: 0 };

/** A place on the page: x and y in points. */
export type Point = readonly [x: number, y: number];
