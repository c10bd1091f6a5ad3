import { byCodePoint } from '../../base/index.js';
import type { Who } from '../../review/index.js';
import type { FoundTake } from '../types.js';
import type { KeyLine } from './blind-key.js';

/** A take, or what looked like one, that is to get a number. */
export interface Unnumbered extends FoundTake {
  readonly who: Who;
}

/**
 * Gives players and takes numbers that say nothing of their names. Whoever has a number in the key keeps it; the others
 * follow in the order of `lotOf`, so that neither alphabet nor folder shows through. A player's further takes are told
 * apart as `07-2`, `07-3`.
 *
 * @param takes in any order
 * @param key numbers that were given before
 * @param lotOf what decides the order of a take among the new ones
 * @returns the whole key: lines of before as they were, and one for each new take
 */
export function numberTakes(
  takes: readonly Unnumbered[],
  key: readonly KeyLine[],
  lotOf: (take: FoundTake) => string,
): KeyLine[] {
  const lines = [...key];
  const known = new Set(key.map(({ file }) => file));
  const numbers = new Map(
    key.flatMap(({ number, who }) => (who.player === null ? [] : [[who.player, number] as const])),
  );
  const fresh = takes.filter(({ file }) => !known.has(file)).map((take) => ({ take, lot: lotOf(take) }));
  fresh.sort((a, b) => byCodePoint(a.lot, b.lot) || byCodePoint(a.take.file, b.take.file));
  let last = Math.max(0, ...key.map(({ number }) => Number(number)));
  const width = Math.max(2, String(last + fresh.length).length);
  for (const { take } of fresh) {
    const { file, who } = take;
    let number = who.player === null ? undefined : numbers.get(who.player);
    if (number === undefined) {
      last += 1;
      number = String(last).padStart(width, '0');
    }
    if (who.player !== null) numbers.set(who.player, number);
    const before = lines.filter((line) => line.number === number).length;
    lines.push({ number, take: before === 0 ? number : `${number}-${before + 1}`, file, who });
  }
  return lines;
}
