/** An affine map: `x' = a x + c y + e`, `y' = b x + d y + f`. Source: SVG 2, coordinate systems. */
export type AffineMap = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** Leaves everything where it is. */
export const UNMOVED: AffineMap = [1, 0, 0, 1, 0, 0];

/**
 * @param outer applied last
 * @param inner applied first
 * @returns both in one
 *
 * Source: SVG 2, coordinate systems.
 */
export function combined(outer: AffineMap, inner: AffineMap): AffineMap {
  const [a, b, c, d, e, f] = outer;
  const [p, q, r, s, t, u] = inner;
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
}

/**
 * @param map affine map
 * @param x any unit
 * @param y same unit
 * @returns where the point goes
 *
 * Source: SVG 2, coordinate systems.
 */
export function mapped([a, b, c, d, e, f]: AffineMap, x: number, y: number): readonly [number, number] {
  return [a * x + c * y + e, b * x + d * y + f];
}

/**
 * @param map affine map
 * @returns how many times longer lengths become, the mean of both directions
 *
 * Source: the determinant of an affine map scales areas.
 */
export function scaleOf([a, b, c, d]: AffineMap): number {
  return Math.sqrt(Math.abs(a * d - b * c));
}
