import type { Boundaries } from '../grid/find-boundaries.js';

/**
 * Lets a search hop from one strong boundary to the next.
 *
 * @param boundaries moments at which a note may begin
 * @param strong strength beyond which an attack or a change of pitch counts
 * @returns for each boundary, and for the place after the last, the first strong one from there on; the number of
 *   boundaries where there is none
 */
export function nextStrong({ attack, pitchChange }: Boundaries, strong: number): Int32Array {
  const next = new Int32Array(attack.length + 1).fill(attack.length);
  for (let b = attack.length - 1; b >= 0; b--) {
    next[b] = Math.max(attack[b]!, pitchChange[b]!) > strong ? b : next[b + 1]!;
  }
  return next;
}
