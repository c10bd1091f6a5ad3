import type { WrittenPitch } from '../score/index.js';

const SIGNS: Readonly<Record<string, string>> = { '-2': '𝄫', '-1': '♭', '0': '♮', '1': '♯', '2': '𝄪' };
const FRACTIONS: readonly (readonly [number, string])[] = [
  [1 / 4, '¼'],
  [1 / 3, '⅓'],
  [1 / 2, '½'],
  [2 / 3, '⅔'],
  [3 / 4, '¾'],
];
const COUNTS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

/**
 * @param alter semitones
 * @returns the sign that asks for it, e.g. `♯`
 *
 * Source: common practice.
 */
export function signOf(alter: number): string {
  return SIGNS[String(Math.round(alter))] ?? '';
}

/**
 * @param pitch letter and alteration
 * @returns name with its sign, a natural included: `F♯`, `B♮`
 *
 * Source: common practice.
 */
export function signedName(pitch: Pick<WrittenPitch, 'step' | 'alter'>): string {
  return pitch.step + signOf(pitch.alter);
}

/**
 * @param beat 1-based, fractional
 * @returns `3`, `2½`, `after 1`
 *
 * Source: definition.
 */
export function beatName(beat: number): string {
  const whole = Math.floor(beat + 0.02);
  const rest = beat - whole;
  if (Math.abs(rest) < 0.02) return String(whole);
  const near = FRACTIONS.find(([value]) => Math.abs(rest - value) < 0.02);
  return near === undefined ? `after ${whole}` : `${whole}${near[1]}`;
}

/**
 * @param words one or more
 * @returns `1`, `1 and 2`, `1, 2 and 3`
 *
 * Source: definition.
 */
export function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}

/**
 * @param count whole number
 * @returns the number in words up to twelve
 *
 * Source: definition.
 */
export function countName(count: number): string {
  return COUNTS[count] ?? String(count);
}
