import type { Language } from '../base/index.js';
import { retold } from '../judge/index.js';
import { GERMAN_NO_FIGURE } from './german/no-figure-words.js';
import { NO_FIGURE, type NoFigureWords } from './no-figure-words.js';

const WORDS: Readonly<Record<Language, NoFigureWords>> = { en: NO_FIGURE, de: GERMAN_NO_FIGURE };

/**
 * @param language of the sheet
 * @returns why a take has no number, in it
 *
 * Source: definition.
 */
export function noFigureIn(language: Language): NoFigureWords {
  return WORDS[language];
}

/**
 * @param language of the sheet
 * @param from language of the result
 * @param reason why there is no number, as the result has it
 * @returns the same in the language of the sheet; where it cannot be said again, a word on where it stands
 *
 * Source: definition.
 */
export function reasonIn(language: Language, from: Language, reason: string): string {
  return retold(language, from, reason) ?? WORDS[language].told;
}
