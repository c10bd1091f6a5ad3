import type { Language } from '../base/index.js';
import { GERMAN_SECTION } from './german/section-words.js';
import { SECTION_WORDS, type SectionWords } from './section-words.js';

const WORDS: Readonly<Record<Language, SectionWords>> = { en: SECTION_WORDS, de: GERMAN_SECTION };

/**
 * @param language of the sheet
 * @returns everything the section sheet says in it
 *
 * Source: definition.
 */
export function sectionWordsIn(language: Language): SectionWords {
  return WORDS[language];
}
