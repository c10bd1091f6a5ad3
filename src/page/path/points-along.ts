import { type Path, POINTS_OF_STEP, type Point } from './path.js';

/** How many straight lines a curve is seen as. */
const LINES_A_CURVE = 8;

/**
 * The points a path goes through: the ends of each line, and points along each curve.
 *
 * @param path of any form
 * @returns one list of points a line or curve; a curve that goes on smoothly from the one before it by its end and its
 * control point, which enclose it
 *
 * Source: Bernstein form of a cubic curve.
 */
export function pointsAlong({ steps, points }: Path): Point[][] {
  const found: Point[][] = [];
  let at: Point = [0, 0];
  let start: Point = at;
  let next = 0;
  for (const step of steps) {
    const own = pairs(points, next, POINTS_OF_STEP[step]);
    const end = own.at(-1) ?? start;
    if (step === 'M') start = end;
    else if (step === 'C') found.push(alongCubic(at, own[0] as Point, own[1] as Point, end));
    else if (step === 'Z') found.push([at, start]);
    else found.push([at, ...own]);
    next += 2 * own.length;
    at = end;
  }
  return found;
}

function pairs(points: readonly number[], from: number, count: number): Point[] {
  return Array.from({ length: count }, (_, i) => [points[from + 2 * i] as number, points[from + 2 * i + 1] as number]);
}

function alongCubic([x0, y0]: Point, [x1, y1]: Point, [x2, y2]: Point, [x3, y3]: Point): Point[] {
  return Array.from({ length: LINES_A_CURVE + 1 }, (_, step) => {
    const t = step / LINES_A_CURVE;
    const s = 1 - t;
    const [a, b, c, e] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
    return [a * x0 + b * x1 + c * x2 + e * x3, a * y0 + b * y1 + c * y2 + e * y3];
  });
}
