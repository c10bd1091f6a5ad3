import { numberInPath } from './path.js';

/**
 * @param x centre, points
 * @param y centre, points
 * @param radius points
 * @returns path data of a circle
 *
 * Source: SVG 2, path data (elliptical arcs).
 */
export function circle(x: number, y: number, radius: number): string {
  const r = numberInPath(radius);
  const across = numberInPath(2 * radius);
  return `M${numberInPath(x - radius)} ${numberInPath(y)}a${r} ${r} 0 1 0 ${across} 0a${r} ${r} 0 1 0 ${numberInPath(-2 * radius)} 0Z`;
}
