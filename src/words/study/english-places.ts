import type { PitchName, RangeEnd } from '../../study/index.js';
import { beatInFigures } from '../place.js';
import { barRuns } from './bar-runs.js';
import type { StudyPlaces } from './study-words.js';

const SIGNS: Readonly<Record<string, string>> = { '-2': '𝄫', '-1': '♭', '0': '♮', '1': '♯', '2': '𝄪' };

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
export function signedName({ step, alter }: PitchName): string {
  return step + signOf(alter);
}

/**
 * @param pitch as written, the middle C in octave 4
 * @returns `B♭5`; a letter alone is a natural here
 *
 * Source: common practice (scientific pitch notation).
 */
export function signedNameWithOctave({ step, alter, octave }: RangeEnd['pitch']): string {
  return `${step}${alter === 0 ? '' : signOf(alter)}${octave}`;
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

/** Where places are, in English. */
export const ENGLISH_PLACES: StudyPlaces = {
  bars: (bar, toBar) => (bar === toBar ? `Bar ${bar}` : `Bars ${bar}–${toBar}`),
  barList: (bars) => {
    const { runs, leftOut } = barRuns(bars);
    const more = leftOut === 0 ? [] : [`${leftOut} more`];
    return `${bars.length === 1 ? 'Bar' : 'Bars'} ${listed([...runs, ...more])}`;
  },
  note: (bar, beat) => {
    const { text, after } = beatInFigures(beat);
    return `Bar ${bar}, beat ${text}${after ? ' and a bit' : ''}`;
  },
};
