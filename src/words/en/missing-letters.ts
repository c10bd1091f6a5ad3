import type { Letters } from '../shapes/letters.js';

/** What stands for letters that no face of the pages holds. */
export const MISSING_LETTERS: Readonly<Record<Letters, string>> = {
  Japanese: '[Japanese letters]',
  Korean: '[Korean letters]',
  Chinese: '[Chinese letters]',
  Arabic: '[Arabic letters]',
  Hebrew: '[Hebrew letters]',
  Thai: '[Thai letters]',
  Hindi: '[Hindi letters]',
  Bengali: '[Bengali letters]',
  Tamil: '[Tamil letters]',
  Georgian: '[Georgian letters]',
  Armenian: '[Armenian letters]',
  Amharic: '[Amharic letters]',
  'other-letters': '[other letters]',
  sign: '[sign]',
};

/**
 * @param packages with faces for letters that are missing
 * @returns how they come onto the pages, with a space after it; nothing when no package is known
 */
export function install(packages: readonly string[]): string {
  return packages.length === 0 ? '' : `They are drawn once the type is there: npm install ${packages.join(' ')}. `;
}
