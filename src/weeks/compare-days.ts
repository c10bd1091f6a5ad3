import type { Wanted } from './measures.js';

/** How two days compare: `none` is no change beyond noise; `different` changed, but neither to nor away from what is asked. */
export type Verdict = 'none' | 'better' | 'worse' | 'different';

/**
 * @param from number of the earlier day
 * @param to number of the later day
 * @param smallest the smallest difference that is called a change
 * @param wanted where the number is meant to lie
 * @returns how they compare; better and worse are themselves told only beyond the smallest change, or where what is
 *   asked for is reached or left
 */
export function compareDays(from: number, to: number, smallest: number, wanted: Wanted): Verdict {
  if (Math.abs(to - from) <= smallest) return 'none';
  const nearer = away(from, wanted) - away(to, wanted);
  if (nearer > 0 && (nearer > smallest || away(to, wanted) === 0)) return 'better';
  if (nearer < 0 && (-nearer > smallest || away(from, wanted) === 0)) return 'worse';
  return 'different';
}

function away(value: number, { low, high }: Wanted): number {
  if (low !== null && value < low) return low - value;
  return high !== null && value > high ? value - high : 0;
}
