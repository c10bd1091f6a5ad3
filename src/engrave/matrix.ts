/** An affine map: `x' = a x + c y + e`, `y' = b x + d y + f`. Source: SVG 2, coordinate systems. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** Leaves everything where it is. */
export const UNMOVED: Matrix = [1, 0, 0, 1, 0, 0];

/**
 * @param outer applied last
 * @param inner applied first
 * @returns both in one
 *
 * Source: SVG 2, coordinate systems.
 */
export function combined(outer: Matrix, inner: Matrix): Matrix {
  const [a, b, c, d, e, f] = outer;
  const [p, q, r, s, t, u] = inner;
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
}

/**
 * @param matrix affine map
 * @param x any unit
 * @param y same unit
 * @returns where the point goes
 *
 * Source: SVG 2, coordinate systems.
 */
export function mapped([a, b, c, d, e, f]: Matrix, x: number, y: number): readonly [number, number] {
  return [a * x + c * y + e, b * x + d * y + f];
}

/**
 * @param matrix affine map
 * @returns how many times longer lengths become, the mean of both directions
 *
 * Source: the determinant of an affine map scales areas.
 */
export function scaleOf([a, b, c, d]: Matrix): number {
  return Math.sqrt(Math.abs(a * d - b * c));
}

/**
 * @param text SVG `transform` attribute: translate, scale, rotate, matrix
 * @returns the affine map
 *
 * Source: SVG 2, the `transform` property.
 */
export function readTransform(text: string | undefined): Matrix {
  let whole = UNMOVED;
  for (const [, name, list] of (text ?? '').matchAll(/(\w+)\s*\(([^)]*)\)/g)) {
    const [p = 0, q, r = 0, s = 0, t = 0, u = 0] = (list ?? '')
      .split(/[\s,]+/)
      .filter(Boolean)
      .map(Number);
    whole = combined(whole, one(name ?? '', [p, q, r, s, t, u]));
  }
  return whole;
}

function one(
  name: string,
  [p, q, r, s, t, u]: readonly [number, number | undefined, number, number, number, number],
): Matrix {
  if (name === 'translate') return [1, 0, 0, 1, p, q ?? 0];
  if (name === 'scale') return [p, 0, 0, q ?? p, 0, 0];
  if (name === 'matrix') return [p, q ?? 0, r, s, t, u];
  if (name !== 'rotate') return UNMOVED;
  const [cos, sin] = [Math.cos((p * Math.PI) / 180), Math.sin((p * Math.PI) / 180)];
  const turn: Matrix = [cos, sin, -sin, cos, 0, 0];
  return combined(combined([1, 0, 0, 1, q ?? 0, r], turn), [1, 0, 0, 1, -(q ?? 0), -r]);
}
