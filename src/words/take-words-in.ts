import type { Language } from '../base/index.js';
import { noteNameIn } from '../judge/index.js';
import { dateInWords } from './dates.js';
import { criterionInWords, wordsFor } from './finding-words.js';
import { GERMAN_CRITERIA, germanWordsFor } from './german/finding-words.js';
import { GERMAN_LISTEN } from './german/listen-words.js';
import { GERMAN_CAPTIONS, GERMAN_MARKS, germanExcerpt } from './german/mark-words.js';
import {
  GERMAN_GAP,
  GERMAN_GLANCE,
  GERMAN_NOT_REVIEWED,
  GERMAN_NOT_REVIEWED_HEADINGS,
  GERMAN_PAGE,
  GERMAN_SMALL_PRINT,
  GERMAN_TABLE,
} from './german/page-words.js';
import {
  germanDate,
  germanDay,
  germanMeasured,
  germanNumber,
  germanPlace,
  germanShortDay,
} from './german/places-and-numbers.js';
import { LISTEN_WORDS } from './listen-words.js';
import { measuredInWords, numberInWords } from './numbers.js';
import { placeInWords } from './place.js';
import { dayInWords, shortDay } from './short-dates.js';
import { LETTERS_MISSING_NOTE, PANEL_CAUTION, PRACTICE_CAUTION } from './small-print-words.js';
import { captionOf, excerptInWords, MARK_NOTES } from './take/mark-words.js';
import { NOT_REVIEWED_HEADINGS, NOT_REVIEWED_WORDS } from './take/not-reviewed-words.js';
import { GAP_WORDS, GLANCE_WORDS, PAGE_WORDS, TABLE_WORDS } from './take/page-words.js';
import type { TakeWords } from './take-words.js';

const WORDS: Readonly<Record<Language, TakeWords>> = {
  en: {
    page: PAGE_WORDS,
    glance: GLANCE_WORDS,
    table: TABLE_WORDS,
    gap: GAP_WORDS,
    listen: LISTEN_WORDS,
    marks: MARK_NOTES,
    notReviewed: NOT_REVIEWED_WORDS,
    notReviewedHeadings: NOT_REVIEWED_HEADINGS,
    smallPrint: {
      practice: PRACTICE_CAUTION,
      panel: PANEL_CAUTION,
      teacher: PANEL_CAUTION,
      lettersMissing: LETTERS_MISSING_NOTE,
    },
    finding: wordsFor,
    criterion: criterionInWords,
    caption: captionOf,
    excerpt: excerptInWords,
    place: placeInWords,
    number: numberInWords,
    measured: measuredInWords,
    date: dateInWords,
    day: dayInWords,
    shortDay,
    note: (name) => name,
  },
  de: {
    page: GERMAN_PAGE,
    glance: GERMAN_GLANCE,
    table: GERMAN_TABLE,
    gap: GERMAN_GAP,
    listen: GERMAN_LISTEN,
    marks: GERMAN_MARKS,
    notReviewed: GERMAN_NOT_REVIEWED,
    notReviewedHeadings: GERMAN_NOT_REVIEWED_HEADINGS,
    smallPrint: GERMAN_SMALL_PRINT,
    finding: germanWordsFor,
    criterion: (criterion) => GERMAN_CRITERIA[criterion],
    caption: (kind) => GERMAN_CAPTIONS[kind],
    excerpt: germanExcerpt,
    place: germanPlace,
    number: germanNumber,
    measured: germanMeasured,
    date: germanDate,
    day: germanDay,
    shortDay: germanShortDay,
    note: (name) => noteNameIn('de', name),
  },
};

/**
 * @param language of the pages
 * @returns everything a take's pages say in it
 *
 * Source: definition.
 */
export function takeWordsIn(language: Language): TakeWords {
  return WORDS[language];
}
