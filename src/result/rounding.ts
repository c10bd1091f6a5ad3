import { isMeasured, type MaybeNumberTold } from '../base/index.js';

/** Decimals kept in result documents, so that files are small and the same on every machine. */
export const DECIMALS = {
  seconds: 4,
  decibels: 2,
  cents: 1,
  beats: 4,
  tempo: 2,
  ratio: 3,
  share: 4,
  clippedShare: 6,
  slope: 3,
  confidence: 2,
  hertz: 2,
  measured: 3,
} as const;

/** What a decimal count is for. */
export type Quantity = keyof typeof DECIMALS;

/** Digital silence has no finite level; documents carry this instead (below the 24-bit floor of −144 dB). */
const SILENCE_DB = -200;

/**
 * @param value any number; minus infinity (the level of silence) becomes -200
 * @param quantity what the number counts, see {@link DECIMALS}
 * @returns the value rounded half away from zero, never -0
 *
 * Source: definition.
 */
export function rounded(value: number, quantity: Quantity): number {
  if (value === Number.NEGATIVE_INFINITY) return SILENCE_DB;
  const factor = 10 ** DECIMALS[quantity];
  const result = (Math.sign(value) * Math.round(Math.abs(value) * factor)) / factor;
  return result === 0 ? 0 : result;
}

/**
 * @param value a number or the reason why there is none
 * @param quantity what the number counts
 * @returns the rounded number, or the reason unchanged
 *
 * Source: definition.
 */
export function roundedMaybe(value: MaybeNumberTold, quantity: Quantity): MaybeNumberTold {
  return isMeasured<number>(value) ? rounded(value, quantity) : value;
}
