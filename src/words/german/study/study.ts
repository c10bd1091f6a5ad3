import type { StudyWords } from '../../study/study-words.js';
import { GERMAN_STUDY_PAGE } from './page.js';
import { GERMAN_PLACES } from './places.js';
import { GERMAN_PLAN } from './plan.js';

/** Everything a study sheet says, in German. */
export const GERMAN_STUDY: StudyWords = { places: GERMAN_PLACES, plan: GERMAN_PLAN, page: GERMAN_STUDY_PAGE };
