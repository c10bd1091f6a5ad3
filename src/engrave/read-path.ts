import type { Path, Step } from '../page/index.js';

/** How many numbers each command of path data takes. Source: SVG 2, path data. */
const ARGUMENTS: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Z: 0 };

/** Steps by command; what goes on after a move is a line. */
const STEPS: Readonly<Record<string, Step>> = { M: 'M', L: 'L', H: 'L', V: 'L', C: 'C', S: 'S' };

/**
 * Reads path data as the engraver writes it: no quadratic curves and no elliptical arcs. Lines along an axis become lines
 * between points, so that the path may also be turned.
 *
 * @param data SVG path data
 * @returns the path with absolute points, in the units it is written in
 * @throws Error for a command the engraver does not use
 *
 * Source: SVG 2, path data.
 */
export function readPath(data: string): Path {
  const steps: Step[] = [];
  const points: number[] = [];
  let [x, y, startX, startY] = [0, 0, 0, 0];
  for (const [, letter = '', list = ''] of data.matchAll(/([a-df-z])([^a-df-z]*)/gi)) {
    const command = letter.toUpperCase();
    const size = ARGUMENTS[command];
    if (size === undefined) throw new Error(`path data with the command ${letter}`);
    const numbers = (list.match(/-?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi) ?? []).map(Number);
    if (size === 0) {
      steps.push('Z');
      [x, y] = [startX, startY];
    }
    for (let at = 0; size > 0 && at + size <= numbers.length; at += size) {
      const isRelative = letter !== command;
      const own = pointsOf(command, numbers.slice(at, at + size), isRelative ? [x, y] : [0, 0], x, y);
      steps.push(command === 'M' && at > 0 ? 'L' : (STEPS[command] as Step));
      points.push(...own);
      [x, y] = own.slice(-2) as [number, number];
      if (command === 'M' && at === 0) [startX, startY] = [x, y];
    }
  }
  return { steps, points };
}

/** The points of one command, absolute. */
function pointsOf(
  command: string,
  numbers: readonly number[],
  [fromX, fromY]: readonly [number, number],
  x: number,
  y: number,
): number[] {
  const first = numbers[0] as number;
  if (command === 'H') return [fromX + first, y];
  if (command === 'V') return [x, fromY + first];
  return numbers.map((value, i) => value + (i % 2 === 0 ? fromX : fromY));
}
