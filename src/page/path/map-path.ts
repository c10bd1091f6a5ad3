import { type AffineMap, mapped } from './affine-map.js';
import { mapPoints } from './map-points.js';
import type { Path } from './path.js';

/**
 * @param path of any form
 * @param map affine map
 * @returns the path where the map takes it, on the grid
 *
 * Source: a Bézier curve goes where its control points go.
 */
export function mapPath(path: Path, map: AffineMap): Path {
  return mapPoints(path, (x, y) => mapped(map, x, y));
}
