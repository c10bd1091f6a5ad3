import type { Language } from '../base/index.js';
import { retold, type Saying } from '../judge/index.js';
import type { Words } from './shapes/words.js';
import { tellCriterion } from './tell-criterion.js';
import { wordsIn } from './words-in.js';

/** What is said of a criterion that was not judged, but for reasons why it was not measured. */
const FIXED: readonly Saying[] = [
  { code: 'left-out', facts: { why: 'all-slurred' } },
  { code: 'left-out', facts: { why: 'under-tempo' } },
  { code: 'left-out', facts: { why: 'by-brief' } },
  { code: 'level-riding', facts: {} },
  { code: 'no-change-of-level', facts: {} },
  { code: 'no-rhythm', facts: {} },
  { code: 'no-articulation', facts: {} },
  { code: 'no-breath-marked', facts: {} },
  { code: 'no-breath-heard', facts: {} },
];

const lineOf = (words: Words, saying: Saying): string =>
  tellCriterion(words, { sayings: [saying] }, (reason) => reason);
const notMeasuredLine = (words: Words, reason: string): string =>
  lineOf(words, { code: 'not-measured', facts: { reason } });

/**
 * Says again why a criterion was not judged.
 *
 * @param language wanted
 * @param from language of the result
 * @param summary the criterion's line in the result
 * @returns the same in the language wanted; null when it is no line of that kind
 *
 * Source: definition.
 */
export function summaryRetold(language: Language, from: Language, summary: string): string | null {
  if (language === from) return summary;
  const [before, after] = [wordsIn(from), wordsIn(language)];
  const fixed = FIXED.find((saying) => lineOf(before, saying) === summary);
  if (fixed !== undefined) return lineOf(after, fixed);
  const head = notMeasuredLine(before, '');
  if (!summary.startsWith(head)) return retold(language, from, summary);
  const reason = retold(language, from, summary.slice(head.length));
  return reason === null ? null : notMeasuredLine(after, reason);
}
