import type { Coded, Sayings } from '../base/index.js';

/**
 * @param sayings what every code of a table is in one language
 * @param value one of the codes with its facts
 * @returns it in words
 */
export function say<T>(sayings: Sayings<T>, { code, facts }: Coded<T>): string {
  const saying = sayings[code] as (facts: unknown) => string;
  return saying(facts);
}
