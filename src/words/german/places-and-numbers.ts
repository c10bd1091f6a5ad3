import type { FindingKind } from '../../judge/index.js';
import { type Measured, numberInWords } from '../numbers.js';
import { beatInFigures, concernsWholeTake, type Place } from '../place.js';

const MONTHS = [
  'Januar',
  'Februar',
  'März',
  'April',
  'Mai',
  'Juni',
  'Juli',
  'August',
  'September',
  'Oktober',
  'November',
  'Dezember',
];

/**
 * @param day ISO 8601 calendar day
 * @returns "2. März 2026"; a text that is no such day is returned as it came
 *
 * Source: ISO 8601-1 for the form read; DIN 5008 for the form written.
 */
export function germanDate(day: string): string {
  const match = /^(\d{4})-(\d{2})-(\d{2})/.exec(day);
  const month = match === null ? undefined : MONTHS[Number(match[2]) - 1];
  return match === null || month === undefined ? day : `${Number(match[3])}. ${month} ${match[1]}`;
}

/**
 * @param day ISO 8601 day
 * @returns day and month, "2. März"; the year stands elsewhere on the page
 *
 * Source: as for the date.
 */
export function germanDay(day: string): string {
  return germanDate(day).replace(/ \d{4}$/, '');
}

/**
 * @param day ISO 8601 calendar day
 * @returns day and month for narrow places, "2.3."; a text that is no such day is returned as it came
 *
 * Source: as for the date; Unicode CLDR, German, day and month in figures.
 */
export function germanShortDay(day: string): string {
  const [, month, date] = /^\d{4}-(\d{2})-(\d{2})/.exec(day) ?? [];
  return month === undefined ? day : `${Number(date)}.${Number(month)}.`;
}

/**
 * @param value any finite number
 * @param decimals most decimals shown; trailing zeros are dropped
 * @returns the number with a decimal comma and a true minus sign
 *
 * Source: DIN 1333 (decimal comma).
 */
export function germanNumber(value: number, decimals: number): string {
  return numberInWords(value, decimals).replace('.', ',');
}

/** Units as the data name them, with what stands for them. */
const UNITS: Readonly<Record<string, (number: string) => string>> = {
  cents: (n) => `${n} Cent`,
  semitones: (n) => (/^−?1$/.test(n) ? `${n} Halbton` : `${n} Halbtöne`),
  'times the written length': (n) => `${n}-mal die notierte Länge`,
  'quarter notes a minute': (n) => `${n} Viertel in der Minute`,
  '': (n) => n,
};

const SEMITONE_SHARES: readonly (readonly [number, string])[] = [
  [10, 'ein Zehntel'],
  [20, 'ein Fünftel'],
  [25, 'ein Viertel'],
  [33.3, 'ein Drittel'],
  [50, 'die Hälfte'],
];

/** Kinds whose sign is said as a word: below 0, and above. */
const WAYS: Readonly<Partial<Record<FindingKind, readonly [below: string, above: string]>>> = {
  rushing: ['langsamer', 'schneller'],
  dragging: ['langsamer', 'schneller'],
  'early-entry': ['zu früh', 'zu spät'],
  'late-entry': ['zu früh', 'zu spät'],
  'note-out-of-tune': ['zu tief', 'zu hoch'],
  'tuning-off': ['zu tief', 'zu hoch'],
  'wrong-note': ['zu tief', 'zu hoch'],
};

/**
 * @param measured value and unit, with what was expected, in German already
 * @param kind of the finding it belongs to; for some kinds the sign is said as a word
 * @returns e.g. "0,6 dB, weniger, als man hören kann; erwartet: mindestens 3"
 *
 * Source: as for the English form.
 */
export function germanMeasured({ value, unit, expected }: Measured, kind?: FindingKind): string {
  const size = Math.abs(value);
  const decimals = unit.startsWith('cent') || unit === '%' || size >= 100 ? 0 : size < 1 ? 2 : 1;
  const ways = kind === undefined ? undefined : WAYS[kind];
  const number = germanNumber(ways === undefined ? value : size, decimals);
  const said = UNITS[unit]?.(number) ?? `${number} ${unit}`;
  const way = ways === undefined ? '' : ` ${ways[value < 0 ? 0 : 1]}`;
  return `${said}${way}${remark(size, unit)}${expected === undefined || expected === '' ? '' : `; erwartet: ${expected}`}`;
}

function remark(size: number, unit: string): string {
  if (unit === 'dB' && size < 1) return ', weniger, als man unterscheiden kann';
  if (unit !== 'cents') return '';
  const near = SEMITONE_SHARES.find(([cents]) => Math.abs(size - cents) <= cents * 0.1);
  return near === undefined ? '' : `, etwa ${near[1]} eines Halbtons`;
}

/**
 * @param place a finding or whatever stands in a bar
 * @returns "Takt 12, Schlag 3", "Takt 5–8", "Im Ganzen"; later passes through a repeat are named
 *
 * Source: definition.
 */
export function germanPlace({ kind, bar, toBar, pass, beat }: Place): string {
  if (concernsWholeTake(kind) || (kind === 'went-well' && beat === undefined)) return 'Im Ganzen';
  const again = pass > 1 ? ` (beim ${pass}. Mal)` : '';
  if (toBar !== undefined && toBar !== bar) return `Takt ${bar}–${toBar}${again}`;
  const figures = beat === undefined ? null : beatInFigures(beat);
  if (figures === null) return `Takt ${bar}${again}`;
  return `Takt ${bar}, ${figures.after ? 'nach Schlag' : 'Schlag'} ${figures.text}${again}`;
}
