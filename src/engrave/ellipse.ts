/** Control points this far along the tangents make a quarter of a circle to 0.03 %. Source: 4/3 (√2 − 1). */
const QUARTER = 0.5523;

/**
 * @param x centre, any unit
 * @param y centre
 * @param rx half width
 * @param ry half height
 * @returns path data of an ellipse in curves, which unlike arcs can be moved by any affine map
 *
 * Source: SVG 2, path data (cubic Bézier curves).
 */
export function ellipse(x: number, y: number, rx: number, ry: number): string {
  const [kx, ky] = [rx * QUARTER, ry * QUARTER];
  return [
    `M${x + rx} ${y}`,
    `C${x + rx} ${y + ky} ${x + kx} ${y + ry} ${x} ${y + ry}`,
    `C${x - kx} ${y + ry} ${x - rx} ${y + ky} ${x - rx} ${y}`,
    `C${x - rx} ${y - ky} ${x - kx} ${y - ry} ${x} ${y - ry}`,
    `C${x + kx} ${y - ry} ${x + rx} ${y - ky} ${x + rx} ${y}Z`,
  ].join('');
}
