import { lineThrough, type PathItem } from '../page/index.js';
import { pathPoints } from './path-points.js';

type Point = readonly [x: number, y: number];

/**
 * Cuts a line or an area off to the left and to the right. Curves that are cut become chains of short lines.
 *
 * @param path with absolute commands
 * @param left points
 * @param right points
 * @returns what lies between; null when nothing does
 *
 * Source: Sutherland and Hodgman, Reentrant polygon clipping, CACM 17 (1974), for two half-planes.
 */
export function clipPath(path: PathItem, left: number, right: number): PathItem | null {
  const pieces = pathPoints(path.d);
  const inside = pieces.every((points) => points.every(([x]) => x >= left && x <= right));
  if (inside) return path;
  const d = path.fill === undefined ? clippedLine(pieces, left, right) : clippedArea(pieces.flat(), left, right);
  return d === '' ? null : { ...path, d };
}

function clippedArea(points: readonly Point[], left: number, right: number): string {
  const kept = halfPlane(
    halfPlane(points, (x) => x >= left, left),
    (x) => x <= right,
    right,
  );
  return kept.length < 3 ? '' : `${lineThrough(kept)}Z`;
}

function halfPlane(points: readonly Point[], holds: (x: number) => boolean, edge: number): Point[] {
  return points.flatMap((point, i) => {
    const before = points.at(i - 1) as Point;
    const crosses = holds(point[0]) !== holds(before[0]);
    return [...(crosses ? [between(before, point, edge)] : []), ...(holds(point[0]) ? [point] : [])];
  });
}

function clippedLine(pieces: readonly (readonly Point[])[], left: number, right: number): string {
  let d = '';
  for (const points of pieces) {
    for (let i = 1; i < points.length; i++) {
      const [a, b] = [points[i - 1] as Point, points[i] as Point];
      if (Math.max(a[0], b[0]) < left || Math.min(a[0], b[0]) > right) continue;
      const cut = (point: Point): Point =>
        point[0] < left ? between(a, b, left) : point[0] > right ? between(a, b, right) : point;
      d += lineThrough([cut(a), cut(b)]);
    }
  }
  return d;
}

function between([x0, y0]: Point, [x1, y1]: Point, x: number): Point {
  return [x, x1 === x0 ? y1 : y0 + ((y1 - y0) * (x - x0)) / (x1 - x0)];
}
