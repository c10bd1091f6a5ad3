import { z } from 'zod';
import { notMeasured } from './schema/common-schema.js';

/** Digital silence has no finite level; documents carry this instead (below the 24-bit floor of −144 dB). */
const SILENCE_DB = -200;

/** Makes the schema of one number; what it is for stands in the published schema, followed by its unit. */
type Quantity = (what?: string) => z.ZodNumber;

/** The same for a level, which is minus infinity where there is silence. */
type Level = (what?: string) => z.ZodNonOptional<z.ZodPreprocess<z.ZodNumber, number>>;

/** Whole semitones, never -0. */
export const semitones = () => z.int().overwrite(withoutSign).meta({ description: 'semitones' });

/** Seconds, kept to 0.1 ms. */
export const seconds = quantity(4, 'seconds');

/** Seconds of what cannot be told more closely, kept to 0.01. */
export const roughSeconds = quantity(2, 'seconds');

/** Decibels, kept to 0.01; minus infinity (the level of silence) becomes -200. */
export const decibels = level(2, 'dB');

/** Cents, kept to 0.1. */
export const cents = quantity(1, 'cents');

/** Beats or quarter notes, kept to four decimals so that thirds can be told. */
export const beats = quantity(4, 'beats');

/** Score time in quarter notes, kept as beats are. */
export const quarters = quantity(4, 'quarter notes');

/** Quarter notes a minute, kept to 0.01. */
export const tempo = quantity(2, 'quarter notes a minute');

/** One length as so many times another, kept to three decimals. */
export const ratio = quantity(3, 'times');

/** A part of a whole, kept to four decimals. It may leave 0 to 1 where a measuring error can take it there. */
export const fraction = quantity(4, 'as part of 1');

/** A part of a whole from 0 to 1, kept to four decimals. */
export const share = within(fraction, 0, 1);

/** A coefficient of correlation from -1 to 1, kept to four decimals. */
export const correlation = within(quantity(4, 'from -1 to 1'), -1, 1);

/** A share so small that four decimals would lose it, kept to six. */
export const smallShare = within(quantity(6, 'as part of 1'), 0, 1);

/** How sure something is, 0 to 1, kept to two decimals. */
export const confidence = within(quantity(2, 'as part of 1'), 0, 1);

/** Decibels a bar, a second or the like, kept to three decimals. */
export const decibelsPer = (unit: string) => level(3, `dB a ${unit}`)();

/** Cents a decibel, kept to three decimals. */
export const centsPerDb = quantity(3, 'cents a dB');

/** Numbers of harmonics, kept to three decimals. */
export const harmonics = quantity(3, 'harmonics');

/** Harmonics a decibel, kept to four decimals. */
export const harmonicsPerDb = quantity(4, 'harmonics a dB');

/** Hertz, kept to 0.01. */
export const hertz = quantity(2, 'Hz');

/** Points, none below 0, kept to a tenth. */
export const points: Quantity = (what) => quantity(1, 'points')(what).min(0);

/** A number whose unit stands beside it in the document, kept to three decimals. */
export const measured = level(3, 'in the unit named beside it');

/**
 * @param number schema of the number
 * @returns schema of the number, or of an object that says why there is none
 */
export function maybe<T extends z.ZodType>(number: T): z.ZodUnion<[T, typeof notMeasured]> {
  return z.union([number, notMeasured]);
}

function quantity(decimals: number, unit: string): Quantity {
  return (what) => rounding(decimals).meta({ description: described(what, unit) });
}

function level(decimals: number, unit: string): Level {
  const loud = (value: number): number => (value === Number.NEGATIVE_INFINITY ? SILENCE_DB : value);
  // What is changed before it is looked at counts as optional in the published schema, unless it is said that it is not.
  return (what) => z.nonoptional(z.preprocess(loud, rounding(decimals))).meta({ description: described(what, unit) });
}

/** Bounds hold for the number as it is kept. */
function within(number: Quantity, least: number, most: number): Quantity {
  return (what) => number(what).min(least).max(most);
}

function described(what: string | undefined, unit: string): string {
  return what === undefined ? unit : `${what}; ${unit}`;
}

/**
 * Rounds half away from zero, so that a number and its opposite are kept alike; never gives -0. A number too large to have
 * decimals stays as it is.
 */
function rounding(decimals: number): z.ZodNumber {
  const factor = 10 ** decimals;
  const round = (value: number): number =>
    Math.abs(value) >= Number.MAX_SAFE_INTEGER
      ? value
      : (Math.sign(value) * Math.round(Math.abs(value) * factor)) / factor;
  return z.number().overwrite((value) => withoutSign(round(value)));
}

/** Nought has no sign in a document. */
function withoutSign(value: number): number {
  return value === 0 ? 0 : value;
}
