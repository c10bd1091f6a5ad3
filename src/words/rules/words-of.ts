import type { Vocabulary, Words } from '../shapes/words.js';
import { weeksWith } from './weeks.js';

/**
 * @param vocabulary of one language
 * @returns the same, and what looks words up in it
 */
export function wordsOf(vocabulary: Vocabulary): Words {
  const { numbers, dates, measures, weeksStanding, troubles, weeksLabels, weeksSentences, ...words } = vocabulary;
  return {
    ...words,
    ...dates,
    number: numbers.number,
    criterion: (criterion) => words.criteria[criterion],
    finding: ({ kind, misreading }) =>
      misreading === undefined ? words.findings[kind] : words.misreadings[misreading],
    caption: (kind) => words.findings[kind].caption,
    weeks: weeksWith({ numbers, dates, measures, weeksStanding, troubles, weeksLabels, weeksSentences }),
  };
}
