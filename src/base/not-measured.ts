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

/** The same as a document holds it: the reason in words, and its code and facts where the program that wrote it kept them. */
export interface NotMeasuredTold {
  readonly notMeasured: string;
  readonly code?: string | undefined;
  readonly facts?: Readonly<Record<string, unknown>> | undefined;
}

/** A number, or the reason why there is none, as a document holds it. */
export type MaybeNumberTold = number | NotMeasuredTold;

/**
 * @param value a number or the reason why there is none, as a code or in words
 * @returns true when there is a number
 */
export function isMeasured<T>(value: T | NotMeasured): value is T;
export function isMeasured<T>(value: T | NotMeasuredTold): value is T;
export function isMeasured(value: unknown): boolean {
  return !(typeof value === 'object' && value !== null && 'notMeasured' in value);
}
