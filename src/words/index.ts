/**
 * Everything that is said to people, one folder a language. The rooms below hand over codes and facts; here they become
 * sentences.
 *
 * Conventions: facts carry plain numbers in the units of the house; rounding and the sign between digits are the words'.
 */
export { cautionSaid, failureSaid, reasonSaid } from './coded-words.js';
export { CSV_WORDS } from './csv-words.js';
export { missingLettersInWords } from './missing-letters.js';
export { concernsWholeTake } from './place.js';
export { type ProgressWords, progressWordsIn } from './progress-words-in.js';
export type { SectionWords } from './section-words.js';
export { sectionWordsIn } from './section-words-in.js';
export type { HairpinFacts, StudyPageWords, StudyPlanWords, StudyWords } from './study/study-words.js';
export { studyWordsIn } from './study/study-words-in.js';
export { captionOf } from './take/mark-words.js';
export type { TakeWords } from './take-words.js';
export { takeWordsIn } from './take-words-in.js';
