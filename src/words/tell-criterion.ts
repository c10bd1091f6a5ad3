import type { CriterionLine, Saying, SayingCode } from '../judge/index.js';
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
 * @param line one criterion of which something can be said, as the judges give it
 * @returns the line as it is read, e.g. "148 of 151 notes as written"
 */
export function tellCriterion(words: Words, { sayings }: Pick<CriterionLine, 'sayings'>): string {
  return sayings.reduce((line, saying) => {
    const said = tellSaying(words, saying);
    return line === '' ? said : `${line}${GOING_ON.has(saying.code) ? ', ' : '; '}${said}`;
  }, '');
}

function tellSaying(words: Words, { code, facts }: Saying): string {
  const say = words.sayings[code] as (facts: Saying['facts']) => string;
  return say(facts);
}
