import type { PartNote } from '../../score/index.js';

/** Prices of the search, all on one scale: about the size of a negative log-likelihood. */
export const PRICE = {
  pitch: 4,
  otherPitch: 1.5,
  unheard: 2.5,
  missed: 2.3,
  unexplainedNote: 1.5,
  added: 2.2,
  grace: 0.4,
  onset: 1.6,
  retongued: 0.3,
  insideNote: 1.6,
  outOfSilence: 2.4,
  mostInside: 4,
  mostRetongued: 1,
  repeatedOnset: 2.6,
  slurredRepeat: 1,
  pause: 1.2,
  pauseSecond: 0.3,
  rushed: 2.5,
  bendDuration: 3,
  mostDuration: 15,
} as const;
/** Notes that may be passed over at once, at most; after the first few each costs less, as in a skipped bar. */
export const MOST_MISSED = 12;
const SINGLY_MISSED = 2;
const ALSO_MISSED_PRICE = 2;

/**
 * @param count notes passed over at once
 * @returns their price
 */
export function missedPrice(count: number): number {
  return PRICE.missed * Math.min(count, SINGLY_MISSED) + ALSO_MISSED_PRICE * Math.max(0, count - SINGLY_MISSED);
}

/**
 * @param seconds time between two onsets
 * @param expected what the pace asks for
 * @param note the first of the two; a fermata or a breath may lengthen it freely
 * @returns the price of the difference
 *
 * Source: Laplacian in the relative difference, softened beyond a bend; constants ours.
 */
export function durationCost(seconds: number, expected: number, note: PartNote): number {
  const longer = seconds > expected;
  const free = note.fermata ? 2 : note.breathAfter !== null ? 0.6 : 0.3;
  const width = 0.03 + (longer ? free : 0.3) * expected;
  const rushed = Math.max(0, 1 - seconds / (RUSHED_SHARE * expected)) * PRICE.rushed;
  const off = rushed + Math.abs(seconds - expected) / width;
  return Math.min(
    PRICE.mostDuration,
    off < PRICE.bendDuration ? off : PRICE.bendDuration + 0.6 * (off - PRICE.bendDuration),
  );
}

/** Nobody plays a note in less than this share of its time without meaning to. */
const RUSHED_SHARE = 0.5;

/** Rounding of frames at both ends of a pause. */
const PAUSE_MARGIN_SECONDS = 0.06;

/**
 * @param seconds time between two onsets
 * @param expected what the pace asks for
 * @param silence how much of the time nothing sounds
 * @returns the price of a breath or a hesitation that explains the difference, mostDuration when silence does not
 */
export function pauseCost(seconds: number, expected: number, silence: number): number {
  const excess = seconds - expected;
  if (excess <= 0 || excess > silence + PAUSE_MARGIN_SECONDS) return PRICE.mostDuration;
  return PRICE.pause + PRICE.pauseSecond * excess;
}
