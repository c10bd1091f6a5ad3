import { type FindingKind, UNITS, type Unit } from '../../judge/index.js';
import type { MeasuredInWords, MeasuredWords } from '../shapes/measured.js';
import type { Numbers } from '../shapes/numbers.js';
import { SMALLEST_HEARD_DB } from './sizes.js';

const SHARES: readonly (readonly [cents: number, share: keyof MeasuredWords['ofASemitone']])[] = [
  [10, 'tenth'],
  [20, 'fifth'],
  [25, 'quarter'],
  [33.3, 'third'],
  [50, 'half'],
];

/** Kinds whose sign is said as a word. */
const WAYS: Readonly<Partial<Record<FindingKind, keyof MeasuredWords['ways']>>> = {
  rushing: 'speed',
  dragging: 'speed',
  'early-entry': 'time',
  'late-entry': 'time',
  'note-out-of-tune': 'pitch',
  'tuning-off': 'pitch',
  'wrong-note': 'pitch',
  'weak-contrast': 'level',
  'reversed-contrast': 'level',
  'weak-hairpin': 'level',
  'reversed-hairpin': 'level',
};

/**
 * @param words the pieces in one language
 * @param numbers how numbers are written in it
 * @returns what says a measured value, e.g. "0.6 dB, less than a listener can tell apart; expected at least 3 dB"
 *
 * Source: 1 dB as the smallest level difference noticed: Slade et al. 2022, on piano tones; 100 cents to the semitone: definition.
 */
export function measuredWith(words: MeasuredWords, { number }: Numbers): MeasuredInWords {
  return ({ value, unit, expected }, kind) => {
    const size = Math.abs(value);
    const ways = kind === undefined ? undefined : WAYS[kind];
    const written = number(ways === undefined ? value : size, decimalsOf(size, unit));
    const said = isUnit(unit) ? words.units[unit](written) : [written, unit].join(' ').trim();
    const way = ways === undefined ? '' : ` ${words.ways[ways][value < 0 ? 0 : 1]}`;
    const asked = expected === undefined || expected === '' ? '' : words.expected(expected);
    return `${said}${way}${remark(size, unit, words)}${asked}`;
  };
}

function decimalsOf(size: number, unit: string): number {
  if (unit.startsWith('cent') || unit === '%' || size >= 100) return 0;
  return size < 1 ? 2 : 1;
}

function isUnit(unit: string): unit is Unit {
  return (UNITS as readonly string[]).includes(unit);
}

function remark(size: number, unit: string, words: MeasuredWords): string {
  if (unit === 'dB' && size < SMALLEST_HEARD_DB) return words.tooSmallToHear;
  if (unit !== 'cents') return '';
  const near = SHARES.find(([cents]) => Math.abs(size - cents) <= cents * 0.1);
  return near === undefined ? '' : words.ofASemitone[near[1]];
}
