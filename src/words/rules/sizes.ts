import { toTenth } from './numbers.js';

/** Source: 1 dB is the smallest difference of level noticed (Slade et al. 2022, on piano tones). */
export const SMALLEST_HEARD_DB = 1;

/** Source: about 10 cents are just noticed (Hill & Summers 2007). */
export const SMALLEST_HEARD_CENTS = 10;

/** Less than this is said to be less than one decibel, or nothing. Source: rounds to none. */
const HALF_A_DECIBEL = 0.5;

/**
 * @param db a size that falls short
 * @param least what it falls short of
 * @returns true when it would read as enough once it is rounded to a tenth
 */
export function isJustUnder(db: number, least: number): boolean {
  return toTenth(db) >= least;
}

/**
 * @param db a size
 * @returns true when it is too small to be told as a number
 */
export function isHardlyAny(db: number): boolean {
  return db < HALF_A_DECIBEL;
}
