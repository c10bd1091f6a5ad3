import type { Language } from '../base/index.js';
import { WORDS as GERMAN } from './de/index.js';
import { WORDS as ENGLISH } from './en/index.js';
import type { Words } from './shapes/words.js';

const WORDS: Readonly<Record<Language, Words>> = { en: ENGLISH, de: GERMAN };

/**
 * @param language of whatever is told
 * @returns everything that is said in it
 */
export function wordsIn(language: Language): Words {
  return WORDS[language];
}
