/**
 * Control points this far along the tangents, in radii, make a quarter of a circle to 0.03 %.
 *
 * Source: the curve meets the circle halfway: 4/3 (√2 − 1).
 */
export const QUARTER = (4 / 3) * (Math.SQRT2 - 1);
