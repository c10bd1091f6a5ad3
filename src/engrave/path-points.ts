/** How many points a curve is seen at. */
const STEPS = 8;

/** A point, both coordinates in points. */
type Point = readonly [x: number, y: number];

/**
 * The points a path goes through, in pieces: the ends of each line, and points along each curve.
 *
 * @param d SVG path data with absolute commands M, L, C, S, Q, T, Z
 * @returns one list a line or curve; curves other than cubic ones by their control points, which enclose them
 *
 * Source: SVG 2, path data; Bernstein form of a cubic curve.
 */
export function pathPoints(d: string): Point[][] {
  const pieces: Point[][] = [];
  let at: Point = [0, 0];
  let start: Point = at;
  for (const [, command = '', list = ''] of d.matchAll(/([MLCSQTZ])([^MLCSQTZ]*)/g)) {
    const numbers = (list.match(/-?[\d.]+(?:e-?\d+)?/g) ?? []).map(Number);
    const points = pairs(numbers);
    if (command === 'M') start = points[0] ?? at;
    else if (command === 'Z') pieces.push([at, start]);
    else if (command === 'C') {
      for (let i = 0; i + 2 < points.length; i += 3) {
        const end = points[i + 2] as Point;
        pieces.push(
          alongCubic(i === 0 ? at : (points[i - 1] as Point), points[i] as Point, points[i + 1] as Point, end),
        );
      }
    } else pieces.push([at, ...points]);
    at = command === 'Z' ? start : (points.at(-1) ?? at);
  }
  return pieces;
}

function pairs(numbers: readonly number[]): Point[] {
  return Array.from({ length: Math.floor(numbers.length / 2) }, (_, i) => [
    numbers[2 * i] as number,
    numbers[2 * i + 1] as number,
  ]);
}

function alongCubic([x0, y0]: Point, [x1, y1]: Point, [x2, y2]: Point, [x3, y3]: Point): Point[] {
  return Array.from({ length: STEPS + 1 }, (_, step) => {
    const t = step / STEPS;
    const s = 1 - t;
    const [a, b, c, e] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
    return [a * x0 + b * x1 + c * x2 + e * x3, a * y0 + b * y1 + c * y2 + e * y3];
  });
}
