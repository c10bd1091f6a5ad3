import type { Language } from '../../base/index.js';
import { retold } from './sentence-in.js';
import type { SummaryWords } from './words.js';
import { wordsIn } from './words-in.js';

/** What is said of a criterion that was not judged, as a list in a fixed order. */
function fixedLines(words: SummaryWords): string[] {
  return [
    ...Object.values(words.leftOut),
    ...[words.levelRiding, words.noChange, words.noRhythm, words.noArticulation, words.noBreathMarked],
    words.noBreathHeard,
  ];
}

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
  const [before, after] = [wordsIn(from).summaries, wordsIn(language).summaries];
  const fixed = fixedLines(before).indexOf(summary);
  if (fixed >= 0) return fixedLines(after)[fixed] ?? null;
  const head = before.notMeasured('');
  if (!summary.startsWith(head)) return retold(language, from, summary);
  const reason = retold(language, from, summary.slice(head.length));
  return reason === null ? null : after.notMeasured(reason);
}
