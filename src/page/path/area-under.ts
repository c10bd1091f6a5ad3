import { areaOf } from './area-of.js';
import { joinPaths } from './join-paths.js';
import type { Path, Point } from './path.js';

/**
 * @param points x and y in points; a NaN in y breaks the area
 * @param base y of the area's straight edge
 * @returns the areas between the points and the straight edge, on the grid
 */
export function areaUnder(points: readonly Point[], base: number): Path {
  const stretches: Point[][] = [[]];
  for (const point of points) {
    if (Number.isNaN(point[1])) stretches.push([]);
    else stretches.at(-1)?.push(point);
  }
  return joinPaths(
    stretches
      .filter((stretch) => stretch.length > 1)
      .map((stretch) => {
        const [first, last] = [stretch[0] as Point, stretch.at(-1) as Point];
        return areaOf([...stretch, [last[0], base], [first[0], base]]);
      }),
  );
}
