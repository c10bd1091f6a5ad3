/** A stream of numbers that depends on nothing but its seed. */
export interface Random {
  /** uniform, 0 ≤ x < 1 */
  readonly uniform: () => number;
  /** normal with mean 0 and standard deviation 1 */
  readonly normal: () => number;
}

/**
 * @param seed any whole number
 * @returns a stream that is the same for the same seed
 *
 * Source: mulberry32 by T. Ettinger (public domain); Box & Muller 1958 for the normal numbers.
 */
export function seededRandom(seed: number): Random {
  let state = seed | 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}
