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
