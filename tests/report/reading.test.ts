import { describe, expect, it } from 'vitest';
import type { Facts } from '../../src/judge/observation.js';
import type { Words } from '../../src/judge/wording/words.js';
import { wordsIn } from '../../src/judge/wording/words-in.js';
import { wordsFor } from '../../src/report/words/finding-words.js';
import { LISTEN_WORDS } from '../../src/report/words/listen-words.js';
import { PANEL_CAUTION, PRACTICE_CAUTION } from '../../src/report/words/small-print-words.js';
import { captionOf } from '../../src/report/words/take/mark-words.js';
import { NOT_REVIEWED_WORDS } from '../../src/report/words/take/not-reviewed-words.js';
import { GLANCE_WORDS, PAGE_WORDS, TABLE_WORDS } from '../../src/report/words/take/page-words.js';
import { FACTS_AS_THEY_COME_UP as SAMPLES } from '../helpers/facts.js';
import { readingGrade, sentenceLengths, syllables } from '../helpers/reading-grade.js';

/** Sixth grade is read at eleven to twelve: a little below the youngest players, as trade terms come on top. */
const HIGHEST_GRADE = 6;
const LONGEST_SENTENCE = 28;

const told = (Object.keys(SAMPLES) as (keyof Facts)[]).flatMap((kind) => {
  const speak = wordsIn('en').findings[kind] as (facts: unknown) => Words;
  return SAMPLES[kind].map((facts) => {
    const misreading = 'misreading' in facts ? facts.misreading : undefined;
    const { why } = wordsFor({ kind, misreading });
    const { text, practice } = speak(facts);
    return [kind, [text, why, practice, captionOf(kind) ?? ''].filter((one) => one !== '').join(' ')] as const;
  });
});

/** Everything else that is written to a player in sentences. */
const around: readonly (readonly [string, string])[] = [
  ['nothing found', PAGE_WORDS.nothing],
  ['the picture', [GLANCE_WORDS.loudness, GLANCE_WORDS.tempo, GLANCE_WORDS.levelRiding].join(' ')],
  ['the table', TABLE_WORDS.weights],
  ['cautions', [PRACTICE_CAUTION, PANEL_CAUTION].join(' ')],
  ['cautions of a page to listen to', LISTEN_WORDS.caution],
  [
    'a page to listen to',
    [
      LISTEN_WORDS.intro,
      LISTEN_WORDS.keys,
      LISTEN_WORDS.withoutScripts,
      LISTEN_WORDS.enough,
      LISTEN_WORDS.curves,
      LISTEN_WORDS.loudnessAlone,
    ].join(' '),
  ],
  ...Object.entries(NOT_REVIEWED_WORDS).map(([name, { what, tries }]) => [name, [what, ...tries].join(' ')] as const),
];

describe('the measure of reading', () => {
  // Source: syllables as dictionaries divide these words (from memory).
  it.each([
    ['note', 1],
    ['played', 1],
    ['barline', 2],
    ['triplet', 2],
    ['staccato', 3],
    ['fermata', 3],
    ['metronome', 3],
    ['accidental', 4],
    ['articulation', 5],
  ])('%s has %d syllables', (word, count) => {
    expect(syllables(word)).toBe(count);
  });

  // By hand: 6 words, 6 syllables, 1 sentence; 13 words, 24 syllables, 1 sentence.
  it('is the formula', () => {
    expect(readingGrade('The cat sat on the mat.')).toBeCloseTo(0.39 * 6 + 11.8 - 15.59, 6);
    const hard = 'The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.';
    expect(readingGrade(hard)).toBeGreaterThan(10);
  });
});

describe('what a player reads', () => {
  it.each([...told, ...around])('%s: is read without help at thirteen', (_, text) => {
    expect(text).not.toMatch(/undefined|NaN/);
    expect([text, readingGrade(text) <= HIGHEST_GRADE]).toEqual([text, true]);
    expect(Math.max(...sentenceLengths(text))).toBeLessThanOrEqual(LONGEST_SENTENCE);
  });
});
