import type { Language } from '../base/index.js';
import { germanMissingLetters } from './german/missing-letters.js';

/** Scripts that pages can name. Source: Unicode Standard Annex 24 for the names of scripts. */
const SCRIPTS: readonly (readonly [name: string, letters: RegExp])[] = [
  ['Japanese', /[\p{Script=Hiragana}\p{Script=Katakana}]/u],
  ['Korean', /\p{Script=Hangul}/u],
  ['Chinese', /\p{Script=Han}/u],
  ['Arabic', /\p{Script=Arabic}/u],
  ['Hebrew', /\p{Script=Hebrew}/u],
  ['Thai', /\p{Script=Thai}/u],
  ['Hindi', /\p{Script=Devanagari}/u],
  ['Bengali', /\p{Script=Bengali}/u],
  ['Tamil', /\p{Script=Tamil}/u],
  ['Georgian', /\p{Script=Georgian}/u],
  ['Armenian', /\p{Script=Armenian}/u],
  ['Amharic', /\p{Script=Ethiopic}/u],
];

/**
 * @param letters that no face of the pages holds, all of one kind
 * @param language of the pages
 * @returns what stands for them, e.g. "[Chinese letters]"; letters without a name here are "[other letters]", signs "[sign]"
 *
 * Source: definition.
 */
export function missingLettersInWords(letters: string, language: Language = 'en'): string {
  const script = SCRIPTS.find(([, pattern]) => pattern.test(letters))?.[0];
  if (language === 'de') return germanMissingLetters(script ?? (/\p{L}/u.test(letters) ? null : 'sign'));
  if (script !== undefined) return `[${script} letters]`;
  return /\p{L}/u.test(letters) ? '[other letters]' : '[sign]';
}
