/** Quarters a minute; what is beyond is a slip of the pen. */
const SLOWEST = 10;
const FASTEST = 1000;

/**
 * @param quarterBpm quarters a minute, or no number
 * @returns true when music can be counted at it
 */
export function isTempo(quarterBpm: number): boolean {
  return quarterBpm >= SLOWEST && quarterBpm <= FASTEST;
}
