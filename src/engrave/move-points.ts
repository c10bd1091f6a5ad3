import { numberInPath } from '../page/index.js';

/**
 * @param d path data as `mapPath` writes it: absolute commands that take pairs of numbers
 * @param map where a point goes, points
 * @returns the same commands with every point moved; curves keep the form their control points give
 *
 * Source: SVG 2, path data.
 */
export function movePoints(d: string, map: (x: number, y: number) => readonly [x: number, y: number]): string {
  return d.replace(/(-?[\d.]+) (-?[\d.]+)/g, (_, x: string, y: string) =>
    map(Number(x), Number(y)).map(numberInPath).join(' '),
  );
}
