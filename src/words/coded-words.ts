import { type Caution, type Failure, type Language, printable, type Reason } from '../base/index.js';
import { CAUTIONS_IN_WORDS as GERMAN_CAUTIONS } from './de/cautions.js';
import { FAULTS_IN_WORDS as GERMAN_FAULTS } from './de/faults.js';
import { REASONS_IN_WORDS as GERMAN_REASONS } from './de/reasons.js';
import { CAUTIONS_IN_WORDS } from './en/cautions.js';
import { FAULTS_IN_WORDS } from './en/faults.js';
import { REASONS_IN_WORDS } from './en/reasons.js';
import { say } from './say.js';

const ENGLISH = {
  reasons: REASONS_IN_WORDS,
  cautions: CAUTIONS_IN_WORDS,
  faults: FAULTS_IN_WORDS,
};

/** What the codes of the house are in each language. */
const WORDS: Readonly<Record<Language, typeof ENGLISH>> = {
  en: ENGLISH,
  de: { reasons: GERMAN_REASONS, cautions: GERMAN_CAUTIONS, faults: GERMAN_FAULTS },
};

/**
 * @param language of the words
 * @param reason why there is no number or no judgement
 * @returns it in words that go on within a sentence
 *
 * Source: definition.
 */
export function reasonSaid(language: Language, reason: Reason): string {
  if (reason.code === 'told-there' && reason.facts.language === language) return reason.facts.said;
  return say(WORDS[language].reasons, reason);
}

/**
 * @param language of the words
 * @param caution what a reader is to know of a recording
 * @returns it in a sentence
 *
 * Source: definition.
 */
export function cautionSaid(language: Language, caution: Caution): string {
  return say(WORDS[language].cautions, caution);
}

/**
 * @param language of the words
 * @param failure why something could not be done
 * @returns one printable line: what was found, and what is needed
 *
 * Source: definition.
 */
export function failureSaid(language: Language, failure: Failure): string {
  return printable(say(WORDS[language].faults, failure));
}
