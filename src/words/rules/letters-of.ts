import { type Letters, SCRIPTS } from '../shapes/letters.js';

/** Source: Unicode Standard Annex 24 for the names of scripts. */
const PATTERNS: Readonly<Record<(typeof SCRIPTS)[number], RegExp>> = {
  Japanese: /[\p{Script=Hiragana}\p{Script=Katakana}]/u,
  Korean: /\p{Script=Hangul}/u,
  Chinese: /\p{Script=Han}/u,
  Arabic: /\p{Script=Arabic}/u,
  Hebrew: /\p{Script=Hebrew}/u,
  Thai: /\p{Script=Thai}/u,
  Hindi: /\p{Script=Devanagari}/u,
  Bengali: /\p{Script=Bengali}/u,
  Tamil: /\p{Script=Tamil}/u,
  Georgian: /\p{Script=Georgian}/u,
  Armenian: /\p{Script=Armenian}/u,
  Amharic: /\p{Script=Ethiopic}/u,
};

/**
 * @param letters all of one kind
 * @returns what they are
 *
 * Source: as for the scripts.
 */
export function lettersOf(letters: string): Letters {
  const script = SCRIPTS.find((name) => PATTERNS[name].test(letters));
  return script ?? (/\p{L}/u.test(letters) ? 'other-letters' : 'sign');
}
