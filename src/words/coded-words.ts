import { type Caution, type Failure, type Language, printable, type Reason } from '../base/index.js';
import { say } from './say.js';
import { wordsIn } from './words-in.js';

/**
 * @param language of the words
 * @param reason why there is no number or no judgement
 * @returns it in words that go on within a sentence
 */
export function reasonSaid(language: Language, reason: Reason): string {
  if (reason.code === 'told-there' && reason.facts.language === language) return reason.facts.said;
  return say(wordsIn(language).reasons, reason);
}

/**
 * @param language of the words
 * @param caution what a reader is to know of a recording
 * @returns it in a sentence
 */
export function cautionSaid(language: Language, caution: Caution): string {
  return say(wordsIn(language).cautions, caution);
}

/**
 * @param language of the words
 * @param failure why something could not be done
 * @returns one printable line: what was found, and what is needed
 */
export function failureSaid(language: Language, failure: Failure): string {
  return printable(say(wordsIn(language).faults, failure));
}
