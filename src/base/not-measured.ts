/** A quality that could not be measured, with the reason in plain words. Never 0, never null. */
export interface NotMeasured {
  readonly notMeasured: string;
}

/** A number, or the reason why there is none. */
export type MaybeNumber = number | NotMeasured;

/**
 * @param reason why there is no number, in plain words a player understands
 * @returns the marker that stands in place of the number
 *
 * Source: definition.
 */
export function notMeasured(reason: string): NotMeasured {
  return { notMeasured: reason };
}

/**
 * @param value a number or the reason why there is none
 * @returns true when there is a number
 *
 * Source: definition.
 */
export function isMeasured<T>(value: T | NotMeasured): value is T {
  return !(typeof value === 'object' && value !== null && 'notMeasured' in value);
}
