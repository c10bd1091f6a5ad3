/**
 * Whether a value is beyond a limit as both are told: what reads as exactly the limit is not beyond it.
 *
 * @param value measured
 * @param limit what is allowed, in the same unit
 * @param decimals how many are told
 * @returns true when the value as told is larger than the limit as told
 */
export function isBeyond(value: number, limit: number, decimals: number): boolean {
  const scale = 10 ** decimals;
  return value > limit && Math.round(value * scale) > Math.round(limit * scale);
}
