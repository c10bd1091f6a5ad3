import type { FindingKind, Unit } from '../../judge/index.js';

/** A measured value as documents carry it. */
export interface Measured {
  readonly value: number;
  readonly unit: string;
  /** in words */
  readonly expected?: string | undefined;
}

/** A sign said as a word: below 0, and above. */
export type Ways = readonly [below: string, above: string];

/** The pieces of a measured value in words. */
export interface MeasuredWords {
  /** the number, written already, with its unit */
  readonly units: Readonly<Record<Unit, (number: string) => string>>;
  readonly ways: Readonly<Record<'speed' | 'time' | 'pitch' | 'level', Ways>>;
  /** goes on after a level that nobody can tell from none */
  readonly tooSmallToHear: string;
  /** goes on after cents; names the share of a semitone */
  readonly ofASemitone: Readonly<Record<'tenth' | 'fifth' | 'quarter' | 'third' | 'half', string>>;
  /** goes on after all of it */
  readonly expected: (expected: string) => string;
}

/** Says what was measured; for some kinds of finding the sign is said as a word. */
export type MeasuredInWords = (measured: Measured, kind?: FindingKind) => string;
