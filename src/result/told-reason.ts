import {
  codeAsData,
  isCoded,
  isMeasured,
  type Language,
  type MaybeNumber,
  type MaybeNumberTold,
  type NotMeasured,
  type NotMeasuredTold,
  REASONS,
  type Reason,
} from '../base/index.js';
import { reasonSaid } from '../words/index.js';

/** Whatever rooms measure, with every reason told. */
export type Told<T> = T extends NotMeasured
  ? NotMeasuredTold
  : T extends readonly (infer One)[]
    ? readonly Told<One>[]
    : T extends object
      ? { readonly [K in keyof T]: Told<T[K]> }
      : T;

/**
 * @param language of the document
 * @param reason why there is no number
 * @returns it as documents hold it: in words, with its code, and its facts where it has some
 */
export function toldReason(language: Language, reason: Reason): NotMeasuredTold {
  const notMeasured = reasonSaid(language, reason);
  // What another document tells in words of its own is not carried on in its language.
  if (reason.code === 'told-there') return { notMeasured, code: reason.code };
  return { notMeasured, ...codeAsData(reason) };
}

/**
 * @param language of the document
 * @param value a number or why there is none
 * @returns the same as documents hold it
 */
export function toldNumber(language: Language, value: MaybeNumber): MaybeNumberTold {
  return isMeasured<number>(value) ? value : toldReason(language, value.notMeasured);
}

/**
 * @param language of the document
 * @param measured numbers and reasons, in objects and lists of any depth
 * @returns the same with every reason told in the language
 */
export function toldReasons<T>(language: Language, measured: T): Told<T> {
  return told(language, measured) as Told<T>;
}

function told(language: Language, value: unknown): unknown {
  if (Array.isArray(value)) return value.map((one) => told(language, one));
  if (typeof value !== 'object' || value === null) return value;
  if ('notMeasured' in value) return toldReason(language, value.notMeasured as Reason);
  return Object.fromEntries(Object.entries(value).map(([name, field]) => [name, told(language, field)]));
}

/**
 * @param value why there is no number, as a document holds it
 * @param from language of the document
 * @returns the reason; where its code is not known, that the document tells it in words of its own
 */
export function reasonOf(value: NotMeasuredTold, from: Language): Reason {
  const { code = '', facts, notMeasured: said } = value;
  const coded = { code, facts: facts ?? {} };
  return isCoded(REASONS, coded) ? coded : { code: 'told-there', facts: { said, language: from } };
}
