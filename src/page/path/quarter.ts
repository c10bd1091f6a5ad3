/** Control points this far along the tangents, in radii, make a quarter of a circle to 0.03 %. Source: 4/3 (√2 − 1). */
export const QUARTER = 0.5523;
