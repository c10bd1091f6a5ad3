/** One step of an outline, as an opened font gives it; units of the face, y upwards. */
export interface OutlineStep {
  readonly command: string;
  readonly args: readonly number[];
}

interface Place {
  readonly x: number;
  readonly y: number;
  readonly onCurve: boolean;
}

const HEADER_BYTES = 10;
/** Flag of a point on the curve; the other flags are for shorter coordinates. */
const ON_CURVE = 1;

/**
 * @param steps outline of quadratic curves, all parts of a composite glyph included
 * @returns the glyph as the table `glyf` holds it, without instructions; empty for a glyph without an outline
 *
 * Source: OpenType 1.9, glyf, simple glyph description.
 */
export function simpleGlyph(steps: readonly OutlineStep[]): Uint8Array {
  const contours = contoursOf(steps);
  const points = contours.flat();
  if (points.length === 0) return new Uint8Array(0);
  const size = HEADER_BYTES + 2 * contours.length + 2 + 5 * points.length;
  const glyph = Buffer.alloc(size + (-size & 3));
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const head = [contours.length, Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  for (const [i, value] of head.entries()) glyph.writeInt16BE(value, 2 * i);
  let at = HEADER_BYTES;
  let last = -1;
  for (const contour of contours) {
    last += contour.length;
    at = glyph.writeUInt16BE(last, at);
  }
  at += 2;
  for (const { onCurve } of points) at = glyph.writeUInt8(onCurve ? ON_CURVE : 0, at);
  for (const values of [xs, ys]) {
    let before = 0;
    for (const value of values) {
      at = glyph.writeInt16BE(value - before, at);
      before = value;
    }
  }
  return new Uint8Array(glyph);
}

function contoursOf(steps: readonly OutlineStep[]): Place[][] {
  const contours: Place[][] = [];
  const add = (x: number, y: number, onCurve: boolean): void => {
    contours.at(-1)?.push({ x: Math.round(x), y: Math.round(y), onCurve });
  };
  for (const { command, args } of steps) {
    const [a, b, c, d] = args as [number, number, number, number];
    if (command === 'moveTo') contours.push([]);
    if (command === 'moveTo' || command === 'lineTo') add(a, b, true);
    if (command === 'quadraticCurveTo') {
      add(a, b, false);
      add(c, d, true);
    }
  }
  return contours;
}
