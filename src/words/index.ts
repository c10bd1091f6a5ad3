/**
 * Everything that is said to people, one folder a language. The rooms below hand over codes and facts; here they become
 * sentences.
 *
 * Conventions: facts carry plain numbers in the units of the house. A folder of words holds what is language: sentences,
 * names, the decimal mark. What is none, such as how many decimals a number has, stands in `rules/`, once for all languages;
 * what every language has to say is described in `shapes/`.
 */
export { cautionSaid, failureSaid, reasonSaid } from './coded-words.js';
export { CSV_WORDS } from './csv-words.js';
export { missingLettersInWords } from './missing-letters-in-words.js';
export { concernsWholeTake } from './rules/whole-take.js';
export type { SectionWords } from './shapes/section.js';
export type { StandingWords } from './shapes/standing.js';
export type { HairpinFacts, StudyPageWords, StudyPlanWords, StudyWords } from './shapes/study.js';
export type { WeeksWords } from './shapes/weeks.js';
export type { Words } from './shapes/words.js';
export { tellCriterion } from './tell-criterion.js';
export { type ToldFinding, tellFinding } from './tell-finding.js';
export { wordsIn } from './words-in.js';
