export const bare = 1;

/** Adds.
 * @param a one number
 */
export function partly(a: number, b: number): number {
  return a + b;
}

/**
 * Adds.
 *
 * @param a one number
 * @returns the next number
 */
export function whole(a: number): number {
  return a + 1;
}
