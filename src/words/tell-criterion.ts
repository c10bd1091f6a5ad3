import type { CriterionLine, Saying, SayingCode } from '../judge/index.js';
import type { ReasonInWords } from './shapes/sayings.js';
import type { Words } from './shapes/words.js';

/** Sayings that go on in the sentence before; all others begin one of their own. */
const GOING_ON: ReadonlySet<SayingCode> = new Set([
  'entries-in-time',
  'staccato-sounds',
  'tenuto-sounds',
  'short-breaths',
  'skips',
]);

/**
 * @param words of one language
 * @param line one criterion, as the judges give it
 * @param reason says in the language why something was not measured
 * @returns the line as it is read, e.g. "148 of 151 notes as written"
 *
 * Source: definition.
 */
export function tellCriterion(
  words: Words,
  { sayings }: Pick<CriterionLine, 'sayings'>,
  reason: ReasonInWords,
): string {
  return sayings.reduce((line, saying) => {
    const said = tellSaying(words, saying, reason);
    return line === '' ? said : `${line}${GOING_ON.has(saying.code) ? ', ' : '; '}${said}`;
  }, '');
}

function tellSaying(words: Words, { code, facts }: Saying, reason: ReasonInWords): string {
  const say = words.sayings[code] as (facts: Saying['facts'], reason: ReasonInWords) => string;
  return say(facts, reason);
}
