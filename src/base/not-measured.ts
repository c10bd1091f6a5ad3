import type { Reason, ReasonArguments } from './reasons.js';

/** A quality that could not be measured, with the reason. Never 0, never null. */
export interface NotMeasured {
  readonly notMeasured: Reason;
}

/** A number, or the reason why there is none. */
export type MaybeNumber = number | NotMeasured;

/**
 * @param reason code of the reason why there is no number, and the facts that belong to it
 * @returns the marker that stands in place of the number
 */
export function notMeasured(...reason: ReasonArguments): NotMeasured {
  const [code, facts = {}] = reason;
  return { notMeasured: { code, facts } as Reason };
}

/**
 * @param value a number or the reason why there is none, as a code or in words
 * @returns true when there is a number
 */
export function isMeasured<T>(value: T | { readonly notMeasured: unknown }): value is T {
  return !(typeof value === 'object' && value !== null && 'notMeasured' in value);
}
