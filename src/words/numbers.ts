import type { FindingKind } from '../judge/index.js';

/**
 * @param value any finite number
 * @param decimals most decimals shown; trailing zeros are dropped
 * @returns the number for reading, with a true minus sign
 *
 * Source: definition.
 */
export function numberInWords(value: number, decimals: number): string {
  const text = String(Number(Math.abs(value).toFixed(decimals)));
  return value < 0 && text !== '0' ? `−${text}` : text;
}

const SMALLEST_HEARD_DB = 1;
const SEMITONE_SHARES: readonly (readonly [number, string])[] = [
  [10, 'a tenth'],
  [20, 'a fifth'],
  [25, 'a quarter'],
  [33.3, 'a third'],
  [50, 'a half'],
];

/** A measured value as findings carry it. */
export interface Measured {
  readonly value: number;
  readonly unit: string;
  readonly expected?: string | undefined;
}

/** Kinds whose sign is said as a word: below 0, and above. */
const WAYS: Readonly<Partial<Record<FindingKind, readonly [below: string, above: string]>>> = {
  rushing: ['slower', 'faster'],
  dragging: ['slower', 'faster'],
  'early-entry': ['early', 'late'],
  'late-entry': ['early', 'late'],
  'note-out-of-tune': ['too low', 'too high'],
  'tuning-off': ['too low', 'too high'],
  'wrong-note': ['too low', 'too high'],
};

/**
 * @param measured value and unit, with what was expected
 * @param kind of the finding it belongs to; for some kinds the sign is said as a word
 * @returns e.g. "0.6 dB, less than a listener can tell apart; expected at least 3 dB"
 *
 * Source: 1 dB as the smallest level difference noticed: Slade et al. 2022; 100 cents to the semitone: definition.
 */
export function measuredInWords({ value, unit, expected }: Measured, kind?: FindingKind): string {
  const size = Math.abs(value);
  const decimals = unit.startsWith('cent') || unit === '%' || size >= 100 ? 0 : size < 1 ? 2 : 1;
  const ways = kind === undefined ? undefined : WAYS[kind];
  const number = numberInWords(ways === undefined ? value : size, decimals);
  const said = unit === '' ? number : `${number} ${number === '1' && unit === 'semitones' ? 'semitone' : unit}`;
  const way = ways === undefined ? '' : ` ${ways[value < 0 ? 0 : 1]}`;
  return `${said}${way}${remark(size, unit)}${expected === undefined || expected === '' ? '' : `; expected ${expected}`}`;
}

function remark(size: number, unit: string): string {
  if (unit === 'dB' && size < SMALLEST_HEARD_DB) return ', less than a listener can tell apart';
  if (unit !== 'cents') return '';
  const near = SEMITONE_SHARES.find(([cents]) => Math.abs(size - cents) <= cents * 0.1);
  return near === undefined ? '' : `, about ${near[1]} of a semitone`;
}
