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
