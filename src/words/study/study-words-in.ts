import type { Language } from '../../base/index.js';
import { GERMAN_STUDY } from '../german/study/study.js';
import { ENGLISH_STUDY_PAGE } from './english-page.js';
import { ENGLISH_PLACES } from './english-places.js';
import { ENGLISH_PLAN } from './english-plan.js';
import type { StudyWords } from './study-words.js';

const WORDS: Readonly<Record<Language, StudyWords>> = {
  en: { places: ENGLISH_PLACES, plan: ENGLISH_PLAN, page: ENGLISH_STUDY_PAGE },
  de: GERMAN_STUDY,
};

/**
 * @param language of the sheet
 * @returns everything a study sheet says in it
 *
 * Source: definition.
 */
export function studyWordsIn(language: Language): StudyWords {
  return WORDS[language];
}
