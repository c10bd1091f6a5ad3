import type { Language } from '../base/index.js';
import type { MeasureId } from '../standards/index.js';
import { GERMAN_MEASURES } from './german/measure-words.js';
import { GERMAN_PROGRESS_LABELS } from './german/progress-labels.js';
import { GERMAN_PROGRESS } from './german/progress-words.js';
import { MEASURE_WORDS, type MeasureWords } from './measure-words.js';
import { PROGRESS_LABELS, type ProgressLabels } from './progress-labels.js';
import { PROGRESS_SENTENCES, type ProgressSentences } from './progress-words.js';
import { takeWordsIn } from './take-words-in.js';

/** A change to be told. */
export interface ToldChange {
  readonly measure: MeasureId;
  readonly verdict: 'better' | 'worse' | 'different';
  readonly fromDay: string;
  readonly from: number;
  readonly to: number;
}

/** Everything the progress sheet says beside the names of findings, criteria and days. */
export interface ProgressWords extends ProgressSentences {
  readonly labels: ProgressLabels;
  /** a measure's name and what its number counts */
  readonly measure: (measure: MeasureId) => Pick<MeasureWords, 'name' | 'unit'>;
  /** its name inside a sentence */
  readonly measureInSentence: (measure: MeasureId) => string;
  /** its number alone */
  readonly figure: (measure: MeasureId, value: number) => string;
  /** one sentence: first the music, then the numbers */
  readonly told: (change: ToldChange) => string;
}

const WORDS: Readonly<Record<Language, ProgressWords>> = {
  en: together('en', PROGRESS_LABELS, PROGRESS_SENTENCES, MEASURE_WORDS),
  de: together('de', GERMAN_PROGRESS_LABELS, GERMAN_PROGRESS, GERMAN_MEASURES),
};

/**
 * @param language of the sheet
 * @returns everything the progress sheet says in it
 *
 * Source: definition.
 */
export function progressWordsIn(language: Language): ProgressWords {
  return WORDS[language];
}

function together(
  language: Language,
  labels: ProgressLabels,
  sentences: ProgressSentences,
  measures: Readonly<Record<MeasureId, MeasureWords>>,
): ProgressWords {
  const { number, day } = takeWordsIn(language);
  const figure = (measure: MeasureId, value: number): string => {
    const text = number(value, measures[measure].decimals);
    return measure === 'tuning' && value > 0 && text !== '0' ? `+${text}` : text;
  };
  return {
    ...sentences,
    ...{ labels, figure },
    measure: (measure) => measures[measure],
    measureInSentence: (measure) => sentences.inSentence(measures[measure].name),
    told: ({ measure, verdict, fromDay, from, to }) => {
      const words = measures[measure];
      return sentences.change(words[verdict], words.value(figure(measure, to)), day(fromDay), figure(measure, from));
    },
  };
}
