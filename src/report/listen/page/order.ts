import type { TakeHead } from '../room-data.js';

/**
 * @param takes of the room
 * @param part whose takes are wanted
 * @param by `list`, `lot`, or a criterion
 * @param lot all takes in the order the lot gave them
 * @returns places of the takes that can be heard, in order
 */
export function orderOf(takes: readonly TakeHead[], part: number | null, by: string, lot: readonly number[]): number[] {
  const here = takes.flatMap((take, i) => (take.part === part && take.part !== null && take.sound !== null ? [i] : []));
  if (by === 'lot') return lot.filter((i) => here.includes(i));
  if (by === 'list') return here;
  const metOf = (i: number) => takes[i]?.met[by] ?? -1;
  return here.toSorted((a, b) => metOf(b) - metOf(a) || a - b);
}

/**
 * @param count of takes
 * @param chance gives numbers from 0 to 1, 1 excluded
 * @returns the numbers from 0 to `count - 1` in an order by lot
 *
 * Source: Durstenfeld 1964, algorithm 235.
 */
export function drawLots(count: number, chance: () => number): number[] {
  const lot = Array.from({ length: count }, (_, i) => i);
  for (let i = count - 1; i > 0; i--) {
    const other = Math.floor(chance() * (i + 1));
    [lot[i], lot[other]] = [lot[other] ?? 0, lot[i] ?? 0];
  }
  return lot;
}
