import type { Language } from '../../base/index.js';
import { ENGLISH } from './english.js';
import { GERMAN } from './german.js';
import type { JudgeWords } from './words.js';

const WORDS: Readonly<Record<Language, JudgeWords>> = { en: ENGLISH, de: GERMAN };

/**
 * @param language of the words
 * @returns everything the judges say in it
 *
 * Source: definition.
 */
export function wordsIn(language: Language): JudgeWords {
  return WORDS[language];
}
