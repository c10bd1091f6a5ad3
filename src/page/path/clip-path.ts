import { areaOf } from './area-of.js';
import { joinPaths } from './join-paths.js';
import { lineThrough } from './line-through.js';
import type { Path, Point } from './path.js';
import { pointsAlong } from './points-along.js';

/**
 * Cuts a line or an area off to the left and to the right. Curves that are cut become chains of short lines.
 *
 * @param path of any form
 * @param isArea whether it is filled: an area is closed again along the cut, a line is not
 * @param left points
 * @param right points
 * @returns what lies between; the path itself when all of it does, null when nothing does
 *
 * Source: Sutherland and Hodgman, Reentrant polygon clipping, CACM 17 (1974), for two half-planes.
 */
export function clipPath(path: Path, isArea: boolean, left: number, right: number): Path | null {
  const lines = pointsAlong(path);
  const inside = lines.every((points) => points.every(([x]) => x >= left && x <= right));
  if (inside) return path;
  const clipped = isArea ? clippedArea(lines.flat(), left, right) : clippedLines(lines, left, right);
  return clipped.steps.length === 0 ? null : clipped;
}

function clippedArea(corners: readonly Point[], left: number, right: number): Path {
  const kept = halfPlane(
    halfPlane(corners, (x) => x >= left, left),
    (x) => x <= right,
    right,
  );
  return kept.length < 3 ? { steps: [], points: [] } : areaOf(kept);
}

function halfPlane(corners: readonly Point[], holds: (x: number) => boolean, edge: number): Point[] {
  return corners.flatMap((corner, i) => {
    const before = corners.at(i - 1) as Point;
    const crosses = holds(corner[0]) !== holds(before[0]);
    return [...(crosses ? [between(before, corner, edge)] : []), ...(holds(corner[0]) ? [corner] : [])];
  });
}

function clippedLines(lines: readonly (readonly Point[])[], left: number, right: number): Path {
  const kept: Path[] = [];
  for (const points of lines) {
    for (let i = 1; i < points.length; i++) {
      const [a, b] = [points[i - 1] as Point, points[i] as Point];
      if (Math.max(a[0], b[0]) < left || Math.min(a[0], b[0]) > right) continue;
      const cut = (point: Point): Point =>
        point[0] < left ? between(a, b, left) : point[0] > right ? between(a, b, right) : point;
      kept.push(lineThrough([cut(a), cut(b)]));
    }
  }
  return joinPaths(kept);
}

function between([x0, y0]: Point, [x1, y1]: Point, x: number): Point {
  return [x, x1 === x0 ? y1 : y0 + ((y1 - y0) * (x - x0)) / (x1 - x0)];
}
