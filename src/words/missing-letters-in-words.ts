import type { Language } from '../base/index.js';
import { lettersOf } from './rules/letters-of.js';
import { wordsIn } from './words-in.js';

/**
 * @param letters that no face of the pages holds, all of one kind
 * @param language of the pages
 * @returns what stands for them, e.g. "[Chinese letters]"; letters without a name here are "[other letters]", signs "[sign]"
 */
export function missingLettersInWords(letters: string, language: Language = 'en'): string {
  return wordsIn(language).missingLetters[lettersOf(letters)];
}
