import type { TempoMark } from '../score/index.js';

/**
 * How long a stretch of the part lasts at the tempos written; stretches that bend (rit., accel.) count as steady.
 *
 * @param tempos tempos in force, the first at 0
 * @param fromQuarters start of the stretch, quarters
 * @param toQuarters end of the stretch, quarters
 * @returns seconds, 0 when the stretch is empty
 *
 * Source: a quarter at q quarters a minute lasts 60 / q seconds, by definition.
 */
export function secondsBetween(tempos: readonly TempoMark[], fromQuarters: number, toQuarters: number): number {
  let seconds = 0;
  for (const [i, { atQuarters, quarterBpm }] of tempos.entries()) {
    const start = i === 0 ? fromQuarters : Math.max(fromQuarters, atQuarters);
    const end = Math.min(toQuarters, tempos[i + 1]?.atQuarters ?? toQuarters);
    if (end > start) seconds += ((end - start) * 60) / quarterBpm;
  }
  return seconds;
}
