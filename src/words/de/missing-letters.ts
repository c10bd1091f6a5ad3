import type { Letters } from '../shapes/letters.js';

/** What stands for letters that no face of the pages holds. */
export const MISSING_LETTERS: Readonly<Record<Letters, string>> = {
  Japanese: '[japanisch]',
  Korean: '[koreanisch]',
  Chinese: '[chinesisch]',
  Arabic: '[arabisch]',
  Hebrew: '[hebräisch]',
  Thai: '[thailändisch]',
  Hindi: '[Hindi]',
  Bengali: '[bengalisch]',
  Tamil: '[tamilisch]',
  Georgian: '[georgisch]',
  Armenian: '[armenisch]',
  Amharic: '[amharisch]',
  'other-letters': '[andere Schrift]',
  sign: '[Zeichen]',
};

/**
 * @param packages with faces for letters that are missing
 * @returns how they come onto the pages, with a space after it; nothing when no package is known
 */
export function install(packages: readonly string[]): string {
  return packages.length === 0
    ? ''
    : `Sie werden gedruckt, sobald die Schrift dafür da ist: npm install ${packages.join(' ')}. `;
}
