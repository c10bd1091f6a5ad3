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
import { readingGrade, sentenceLengths, syllables } from '../helpers/reading-grade.js';

/** Sixth grade is read at eleven to twelve: a little below the youngest players, as trade terms come on top. */
const HIGHEST_GRADE = 6;
const LONGEST_SENTENCE = 28;

const change = { from: 'mf', to: 'f', db: 1.2, least: 3, byRegister: false } as const;
const wedge = { kind: 'diminuendo', db: 1.2, least: 3, byRegister: false } as const;
const entry = { milliseconds: 220, restQuarters: 1.5 };

/** Facts as they come up, in each way a kind can be told. */
const SAMPLES: { readonly [K in keyof Facts]: readonly Facts[K][] } = {
  accidental: (
    [
      'key-signature-forgotten',
      'accidental-forgotten',
      'dropped-within-bar',
      'carried-past-barline',
      'wrong-octave-applied',
    ] as const
  ).map((misreading) => ({ written: 'B♭', played: 'B', letter: 'B', misreading })),
  'wrong-note': [
    { written: 'G', played: 'E♭', octave: null },
    { written: 'G', played: 'G', octave: 'higher' },
  ],
  'missed-note': [
    { written: 'D', sure: true },
    { written: 'D', sure: false },
  ],
  'added-note': [
    { played: 'D', after: 'C' },
    { played: 'D', after: null },
  ],
  'skipped-bars': [
    { toBar: '12', atEnd: false, fileEnds: false },
    { toBar: '20', atEnd: true, fileEnds: false },
    { toBar: '20', atEnd: true, fileEnds: true },
  ],
  restart: [{ stoppedAtBar: '7' }],
  'weak-contrast': [change, { ...change, byRegister: true }],
  'reversed-contrast': [{ from: 'p', to: 'f', db: -4 }],
  'weak-hairpin': [wedge, { ...wedge, byRegister: true }, { ...wedge, kind: 'crescendo' }],
  'reversed-hairpin': [{ kind: 'crescendo', db: -3 }],
  'fermata-long': [{ ratio: 3.4, most: 3 }],
  'fermata-short': [{ ratio: 0.9, least: 1.25 }],
  'late-entry': [entry],
  'early-entry': [entry],
  'uneven-group': [
    { notes: 3, tuplet: true, which: 0, share: 0.48, written: 0.33 },
    { notes: 4, tuplet: false, which: 3, share: 0.35, written: 0.25 },
  ],
  hesitation: [{ seconds: 1.3 }],
  rushing: [{ percent: 12 }],
  dragging: [{ percent: 12 }],
  'slur-broken': [{ milliseconds: 70 }],
  'staccato-long': [
    { percent: 85, usual: 45, all: false },
    { percent: 85, usual: null, all: true },
  ],
  'accent-weak': [{ db: 0.2 }, { db: -2 }],
  'breath-unmarked': [
    { seconds: 0.4, inSlur: true },
    { seconds: 0.4, inSlur: false },
  ],
  'breath-late': [{ seconds: 0.5 }],
  'tuning-off': [{ cents: 24 }, { cents: -24 }],
  'note-out-of-tune': [{ written: 'A', cents: 38, times: 4 }],
  'off-tempo': [
    { played: 78, marked: 92 },
    { played: 110, marked: 92 },
  ],
  'went-well': [
    { about: { what: 'accidentals', count: 11 } },
    { about: { what: 'notes', right: 100, of: 102 } },
    { about: { what: 'contrast', from: 'f', to: 'p', db: 13 } },
    { about: { what: 'hairpin', kind: 'crescendo', db: 12 } },
    { about: { what: 'fermatas', count: 2 } },
    { about: { what: 'steady-tempo', quarterBpm: 92, percent: 1 } },
    { about: { what: 'intonation', share: 0.95, cents: 10 } },
  ],
};

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
