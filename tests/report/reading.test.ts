import { describe, expect, it } from 'vitest';
import { CAUTIONS, type Coded, type CodeTable, REASONS, type Sayings } from '../../src/base/index.js';
import type { Facts } from '../../src/judge/observation.js';
import { GERMAN_SENTENCES } from '../../src/judge/wording/german-sentences.js';
import type { SummaryWords, Words } from '../../src/judge/wording/words.js';
import { wordsIn } from '../../src/judge/wording/words-in.js';
import * as GermanCautions from '../../src/words/de/cautions.js';
import * as GermanReasons from '../../src/words/de/reasons.js';
import * as EnglishCautions from '../../src/words/en/cautions.js';
import * as EnglishReasons from '../../src/words/en/reasons.js';
import { wordsFor } from '../../src/words/finding-words.js';
import { LISTEN_WORDS } from '../../src/words/listen-words.js';
import { say } from '../../src/words/say.js';
import { PANEL_CAUTION, PRACTICE_CAUTION } from '../../src/words/small-print-words.js';
import { captionOf } from '../../src/words/take/mark-words.js';
import { NOT_REVIEWED_WORDS } from '../../src/words/take/not-reviewed-words.js';
import { GLANCE_WORDS, PAGE_WORDS, TABLE_WORDS } from '../../src/words/take/page-words.js';
import { FACTS_AS_THEY_COME_UP as SAMPLES } from '../helpers/facts.js';
import { lix } from '../helpers/lix.js';
import { readingGrade, sentenceLengths, syllables } from '../helpers/reading-grade.js';
import { studySentences } from '../helpers/study-facts.js';

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

/** What is said of each criterion, as it comes up; a criterion's line may be made of several. */
const summaries = (say: SummaryWords): (readonly [string, string])[] => [
  ...Object.entries(say.leftOut),
  ['notes', say.notes(300, 306, 2)],
  ['groups and entries', [say.groupsEven(11, 12), say.entriesInTime(3, 4)].join('. ')],
  ['no rhythm', say.noRhythm],
  ['tempo', say.tempo(88.4, 92)],
  ['level riding', say.levelRiding],
  ['no change', say.noChange],
  ['hairpins', say.hairpins(1, 2)],
  ['one hairpin', say.hairpins(0, 1)],
  ...([8, 5, 0] as const).map((plain) => {
    const heard = { of: 8, plain, reversed: 0, usualDb: 6.2, smallestDb: 1.2, leastDb: 3 };
    return [`changes, ${plain} of 8`, say.contrasts(heard)] as const;
  }),
  ['changes, some reversed', say.contrasts({ of: 8, plain: 5, reversed: 2, usualDb: 6, smallestDb: -3, leastDb: 3 })],
  ['wrong order', say.wrongOrder('p', 'mf')],
  ['slurs', say.slursJoined(40, 42)],
  ['dots', say.dotted(48)],
  ['lines', say.tenuto(92)],
  ['no articulation', say.noArticulation],
  ['no breath marked', say.noBreathMarked],
  ['no breath heard', say.noBreathHeard],
  ['breaths', `${say.breathsHeard(4, 6)}, ${say.shortBreaths(2)}; ${say.breathsBeyond(1)}`],
  ['tuning', say.tuning(442.1, 8.3)],
  ['register', say.register('high', 12)],
  ['loud notes', say.loudNotes(9)],
  ['played through', say.playedThrough],
  ['stops', say.stops(1, 2)],
];

/** Facts that stand for any of their kind. */
const SAMPLE: Readonly<Record<string, unknown>> = {
  number: 3,
  numbers: [3],
  text: 'mf',
  code: { code: 'no-note-heard' },
};

/** Hardly more than two long names of marks, which have no shorter ones. */
const NAMES_ALONE = 'no-hairpins';

/** Every sentence of a table in both languages. */
function bothOf<T extends CodeTable>(table: T, english: Sayings<T>, german: Sayings<T>): (readonly [string, string])[] {
  const told = Object.entries(table).filter(([code]) => code !== NAMES_ALONE);
  return told.map(([code, shapes]) => {
    const facts = Object.fromEntries(Object.entries(shapes).map(([name, shape]) => [name, SAMPLE[String(shape)]]));
    const coded = { code, facts } as unknown as Coded<T>;
    return [say(english, coded), say(german, coded)] as const;
  });
}

/** Reasons and cautions. */
const CODED = [
  ...bothOf(REASONS, EnglishReasons.REASONS_IN_WORDS, GermanReasons.REASONS_IN_WORDS),
  ...bothOf(CAUTIONS, EnglishCautions.CAUTIONS_IN_WORDS, GermanCautions.CAUTIONS_IN_WORDS),
];

/** Reasons, cautions and what is expected: every sentence the rooms say, as a test of the judges holds them complete. */
const EXPECTED = Object.entries(GERMAN_SENTENCES).map(([english, german]) => {
  const fill = (text: string, words: readonly string[]): string => {
    let next = 0;
    return text.replaceAll('{n}', '3').replaceAll('{}', () => words[next++] ?? 'mf');
  };
  return [fill(english, []), fill(german, [])] as const;
});

const FIXED = [...CODED, ...EXPECTED];

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

describe('what a study sheet says', () => {
  it.each(studySentences('en'))('%s: is read without help at thirteen: %s', (_, text) => {
    expect(text).not.toMatch(/undefined|NaN/);
    expect([text, readingGrade(text) <= HIGHEST_GRADE]).toEqual([text, true]);
    expect(Math.max(...sentenceLengths(text))).toBeLessThanOrEqual(LONGEST_SENTENCE);
  });
});

/** A line of fewer words is read at a glance, and a formula made for prose says nothing about it. */
const LEAST_WORDS = 5;
const isProse = (text: string): boolean => text.split(' ').length >= LEAST_WORDS;

/** Björnsson 1968: 40 is light fiction, 50 plain non-fiction. */
const HIGHEST_LIX = 50;

describe('the lines of the criteria', () => {
  it.each(summaries(wordsIn('en').summaries).filter(([, text]) => isProse(text)))('%s: %s', (_, text) => {
    expect([text, readingGrade(text) <= HIGHEST_GRADE]).toEqual([text, true]);
  });

  it.each(summaries(wordsIn('de').summaries).filter(([, text]) => isProse(text)))('%s, in German: %s', (_, text) => {
    expect([text, lix(text) <= HIGHEST_LIX]).toEqual([text, true]);
  });

  it('are prose for the greater part', () => {
    expect(summaries(wordsIn('en').summaries).filter(([, text]) => isProse(text)).length).toBeGreaterThan(12);
  });
});

describe('reasons and cautions', () => {
  it.each(FIXED.filter(([english]) => isProse(english)))('%s', (english) => {
    expect([english, readingGrade(english) <= HIGHEST_GRADE]).toEqual([english, true]);
    expect(Math.max(...sentenceLengths(english))).toBeLessThanOrEqual(LONGEST_SENTENCE);
  });

  it.each(FIXED.map(([, german]) => german).filter(isProse))('%s', (german) => {
    expect([german, lix(german) <= HIGHEST_LIX]).toEqual([german, true]);
  });
});
