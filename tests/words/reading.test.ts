import { describe, expect, it } from 'vitest';
import { CAUTIONS, type Coded, type CodeTable, type Language, REASONS, type Sayings } from '../../src/base/index.js';
import { contrastsSaying } from '../../src/judge/dynamics-sayings.js';
import type { Saying } from '../../src/judge/index.js';
import type { Facts } from '../../src/judge/observed/observation.js';
import { tempoSaying, tuningSaying } from '../../src/judge/pitch-and-tempo-sayings.js';
import { say } from '../../src/words/say.js';
import { wordsIn } from '../../src/words/words-in.js';
import { LEANINGS, FACTS_AS_THEY_COME_UP as SAMPLES } from '../helpers/facts.js';
import { lix } from '../helpers/lix.js';
import { readingGrade, sentenceLengths, syllables } from '../helpers/reading-grade.js';
import { lineOf, saidOfKind } from '../helpers/said.js';
import { studySentences } from '../helpers/study-facts.js';

/** Sixth grade is read at eleven to twelve: a little below the youngest players, as trade terms come on top. */
const HIGHEST_GRADE = 6;
const LONGEST_SENTENCE = 28;

const words = wordsIn('en');

const told = (Object.keys(SAMPLES) as (keyof Facts)[]).flatMap((kind) => {
  return SAMPLES[kind].map((facts) => {
    const misreading = 'misreading' in facts ? facts.misreading : undefined;
    const { why } = words.finding({ kind, misreading });
    const { text, practice } = saidOfKind('en', kind, facts);
    return [kind, [text, why, practice, words.caption(kind) ?? ''].filter((one) => one !== '').join(' ')] as const;
  });
});

/** Everything else that is written to a player in sentences. */
const around: readonly (readonly [string, string])[] = [
  ['nothing found', words.page.nothing],
  ['the picture', [words.glance.loudness, words.glance.tempo, words.glance.levelRiding].join(' ')],
  ['the table', words.table.weights],
  ['cautions', [words.smallPrint.practice, words.smallPrint.panel].join(' ')],
  ...Object.entries(words.notReviewed).map(([name, { what, tries }]) => [name, [what, ...tries].join(' ')] as const),
];

/** What is said of each criterion, as it comes up; a criterion's line may be made of several. */
const LINES: readonly (readonly [string, ...Saying[]])[] = [
  ['notes', { code: 'notes-as-written', facts: { right: 300, of: 306, unclear: 2 } }],
  ...(['brighter', 'as-bright', 'darker'] as const).map((beside): readonly [string, Saying] => {
    return [`loud tone ${beside}`, { code: 'loud-tone', facts: { beside } }];
  }),
  ['breath in the tone', { code: 'tone-over-breath', facts: { db: 31.4 } }],
  ['groups', { code: 'groups-even', facts: { even: 11, of: 12 } }],
  ...LEANINGS.map((facts): readonly [string, Saying] => ['leaning groups', { code: 'groups-lean', facts }]),
  ['entries', { code: 'entries-in-time', facts: { inTime: 3, of: 4 } }],
  ['tempo', tempoSaying(88.4, 92, 'quarter')],
  ['hairpins', { code: 'hairpins', facts: { plain: 1, of: 2 } }],
  ['one hairpin', { code: 'hairpins', facts: { plain: 0, of: 1 } }],
  ...([8, 5, 0] as const).map((plain) => {
    const heard = { of: 8, plain, reversed: 0, usualDb: 6.2, smallestDb: 1.2, leastDb: 3 };
    return [`changes, ${plain} of 8`, contrastsSaying(heard)] as const;
  }),
  ['changes, some reversed', contrastsSaying({ of: 8, plain: 5, reversed: 2, usualDb: 6, smallestDb: -3, leastDb: 3 })],
  ['wrong order', { code: 'wrong-order', facts: { softer: 'p', louder: 'mf' } }],
  ['slurs', { code: 'slurs-joined', facts: { joined: 40, of: 42 } }],
  ['dots', { code: 'staccato-sounds', facts: { percent: 48 } }],
  ['lines', { code: 'tenuto-sounds', facts: { percent: 92 } }],
  [
    'breaths',
    { code: 'breaths-heard', facts: { heard: 4, of: 6 } },
    { code: 'short-breaths', facts: { count: 2 } },
    { code: 'breaths-beyond', facts: { count: 1 } },
  ],
  ['tuning', tuningSaying(442.1, 8.3)],
  ['register', { code: 'register', facts: { register: 'high', cents: 12 } }],
  ['loud notes', { code: 'loud-notes', facts: { cents: 9 } }],
  ['played through', { code: 'played-through', facts: {} }],
  ['stops', { code: 'restarts', facts: { count: 1 } }, { code: 'skips', facts: { count: 2 } }],
];

const summaries = (language: Language): (readonly [string, string])[] =>
  LINES.map(([name, ...sayings]) => [name, lineOf(language, ...sayings)] as const);

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
  ...bothOf(REASONS, wordsIn('en').reasons, wordsIn('de').reasons),
  ...bothOf(CAUTIONS, wordsIn('en').cautions, wordsIn('de').cautions),
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
  it.each(summaries('en').filter(([, text]) => isProse(text)))('%s: %s', (_, text) => {
    expect([text, readingGrade(text) <= HIGHEST_GRADE]).toEqual([text, true]);
  });

  it.each(summaries('de').filter(([, text]) => isProse(text)))('%s, in German: %s', (_, text) => {
    expect([text, lix(text) <= HIGHEST_LIX]).toEqual([text, true]);
  });

  it('are prose for the greater part', () => {
    expect(summaries('en').filter(([, text]) => isProse(text)).length).toBeGreaterThan(12);
  });
});

describe('reasons and cautions', () => {
  it.each(CODED.filter(([english]) => isProse(english)))('%s', (english) => {
    expect([english, readingGrade(english) <= HIGHEST_GRADE]).toEqual([english, true]);
    expect(Math.max(...sentenceLengths(english))).toBeLessThanOrEqual(LONGEST_SENTENCE);
  });

  it.each(CODED.map(([, german]) => german).filter(isProse))('%s', (german) => {
    expect([german, lix(german) <= HIGHEST_LIX]).toEqual([german, true]);
  });
});
