import { numberInPath } from '../page/index.js';
import { type Matrix, mapped } from './matrix.js';

/** How many numbers each command of path data takes. Source: SVG 2, path data. */
const ARGUMENTS: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2, Z: 0 };

/**
 * Moves path data by an affine map. Lines along an axis become lines between points, so that the map may also turn.
 *
 * @param d SVG path data without elliptical arcs
 * @param matrix affine map
 * @returns path data with absolute commands
 *
 * Source: SVG 2, path data.
 */
export function mapPath(d: string, matrix: Matrix): string {
  let out = '';
  let [x, y, startX, startY] = [0, 0, 0, 0];
  for (const [, letter = '', list = ''] of d.matchAll(/([MLHVCSQTZ])([^MLHVCSQTZ]*)/gi)) {
    const upper = letter.toUpperCase();
    const numbers = (list.match(/-?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi) ?? []).map(Number);
    const size = ARGUMENTS[upper] as number;
    if (size === 0) {
      out += 'Z';
      [x, y] = [startX, startY];
    }
    for (let at = 0; size > 0 && at + size <= numbers.length; at += size) {
      const points = pointsOf(upper, numbers.slice(at, at + size), letter === upper ? null : [x, y], x, y);
      [x, y] = points.at(-1) as readonly [number, number];
      if (upper === 'M' && at === 0) [startX, startY] = [x, y];
      const command = upper === 'H' || upper === 'V' || (upper === 'M' && at > 0) ? 'L' : upper;
      out +=
        command +
        points
          .map((point) =>
            mapped(matrix, ...point)
              .map(numberInPath)
              .join(' '),
          )
          .join(' ');
    }
  }
  return out;
}

/** The points of one command, absolute. */
function pointsOf(
  command: string,
  numbers: readonly number[],
  origin: readonly [number, number] | null,
  x: number,
  y: number,
): (readonly [number, number])[] {
  const [fromX, fromY] = origin ?? [0, 0];
  const first = numbers[0] as number;
  if (command === 'H') return [[fromX + first, y]];
  if (command === 'V') return [[x, fromY + first]];
  return numbers.flatMap((value, i) =>
    i % 2 === 0 ? [[fromX + value, fromY + (numbers[i + 1] as number)] as const] : [],
  );
}
