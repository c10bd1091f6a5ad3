import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LANGUAGES } from '../../src/base/index.js';
import type { Facts, Praise } from '../../src/judge/observed/observation.js';
import { MISREADINGS } from '../../src/score/index.js';
import { tellFinding } from '../../src/words/tell-finding.js';
import { wordsIn } from '../../src/words/words-in.js';
import { saidOfKind } from '../helpers/said.js';

const names = fc.constantFrom('C', 'D', 'E', 'F', 'G', 'A', 'B', 'F♯', 'B♭', 'A♭', 'E♭♭');
const marks = fc.constantFrom('pp', 'p', 'mp', 'mf', 'f', 'ff');
const bars = fc.integer({ min: 1, max: 200 }).map(String);
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const wedge = fc.constantFrom<'crescendo' | 'diminuendo'>('crescendo', 'diminuendo');
const entry = fc.record({ milliseconds: number(0, 900), restQuarters: number(0.25, 4) });
const change = fc.record({ db: number(-12, 12), least: fc.constant(3), byRegister: fc.boolean() });
const misreading = fc.constantFrom(...MISREADINGS);
const count = fc.integer({ min: 1, max: 300 });
const praise = fc.oneof<fc.Arbitrary<Praise>[]>(
  fc.record({ what: fc.constant('accidentals' as const), count }),
  fc.record({ what: fc.constant('notes' as const), right: count, of: count }),
  fc.record({ what: fc.constant('contrast' as const), from: marks, to: marks, db: number(6, 20) }),
  fc.record({ what: fc.constant('hairpin' as const), kind: wedge, db: number(5, 20) }),
  fc.record({ what: fc.constant('fermatas' as const), count }),
  fc.record({
    what: fc.constant('steady-tempo' as const),
    quarterBpm: number(30, 240),
    beat: fc.constantFrom('quarter' as const, 'dotted-quarter' as const),
    percent: number(0, 3),
  }),
  fc.record({ what: fc.constant('intonation' as const), share: number(0.75, 1), cents: fc.constant(10) }),
);

/** Whatever a judge can say of each kind. */
const FACTS: { readonly [K in keyof Facts]: fc.Arbitrary<Facts[K]> } = {
  accidental: fc.record({ written: names, played: names, letter: names, misreading }),
  'wrong-note': fc.record({
    written: names,
    played: names,
    octave: fc.constantFrom<'higher' | 'lower' | null>('higher', 'lower', null),
  }),
  'missed-note': fc.record({ written: names, sure: fc.boolean() }),
  'added-note': fc.record({ played: names, after: fc.option(names) }),
  'skipped-bars': fc.record({ toBar: bars, atEnd: fc.boolean(), fileEnds: fc.boolean() }),
  restart: fc.record({ stoppedAtBar: bars, whole: fc.boolean() }),
  'weak-contrast': fc.tuple(change, marks, marks).map(([c, from, to]) => ({ ...c, from, to })),
  'reversed-contrast': fc.record({ from: marks, to: marks, db: number(-20, -1) }),
  'weak-hairpin': fc.tuple(change, wedge).map(([c, kind]) => ({ ...c, kind })),
  'reversed-hairpin': fc.record({ kind: wedge, db: number(-20, -1) }),
  'fermata-long': fc.record({ ratio: number(3, 12), most: fc.constant(3) }),
  'fermata-short': fc.record({ ratio: number(0.1, 1.25), least: fc.constant(1.25) }),
  'late-entry': entry,
  'early-entry': entry,
  'uneven-group': fc.record({
    notes: fc.integer({ min: 2, max: 12 }),
    tuplet: fc.boolean(),
    which: fc.integer({ min: 0, max: 11 }),
    share: number(0.02, 0.98),
    written: number(0.1, 0.5),
  }),
  hesitation: fc.record({ seconds: number(0.8, 9) }),
  rushing: fc.record({ percent: number(7, 60), throughout: fc.boolean() }),
  dragging: fc.record({ percent: number(7, 60), throughout: fc.boolean() }),
  'slur-broken': fc.record({ milliseconds: number(28, 220) }),
  'staccato-long': fc.record({ percent: number(72, 100), all: fc.boolean(), usual: fc.option(number(20, 72)) }),
  'accent-weak': fc.record({ db: number(-9, 0.5) }),
  'breath-unmarked': fc.record({ seconds: number(0.22, 2), inSlur: fc.boolean() }),
  'breath-late': fc.record({ seconds: number(0.35, 0.8) }),
  'breath-missed': fc.record({ seconds: number(0, 0.12) }),
  'breath-short': fc.record({ seconds: number(0.12, 0.3) }),
  'tuning-off': fc.record({ cents: number(-90, 90).filter((cents) => Math.abs(cents) > 15) }),
  'note-out-of-tune': fc.record({ written: names, cents: number(-90, 90), times: fc.integer({ min: 1, max: 9 }) }),
  'unsteady-note': fc.record({ cents: number(12, 90), usual: number(0, 20) }),
  'air-gives-way': fc.record({ cents: number(15, 90), db: number(2, 30) }),
  'cracked-start': fc.record({ milliseconds: number(40, 250), above: fc.boolean() }),
  'speaks-late': fc.record({ milliseconds: number(80, 300), usual: number(0, 120) }),
  'hit-start': fc.record({ db: number(5, 20), usual: number(-8, 4) }),
  'off-tempo': fc.record({ played: number(30, 240), marked: number(30, 240) }),
  'went-well': fc.record({ about: praise }),
};

/** What no player is told: slips of programming, and words of the workshop. */
const SLIPS = /undefined|NaN|null|Infinity|\[object|-0(?![\d.]*[1-9])|−0(?![\d.]*[1-9])|\s-\d|\d\.\d{3}|\s{2}/;
const JARGON =
  /\b(?:dB|dBFS|RMS|Hz|FFT|MIDI|ms|onset|offset|confidence|alignment|threshold|median|standard deviation|semitones?|segment|frame|midi|index|algorithm|detected|outlier|interval)\b/i;

const KINDS = Object.keys(wordsIn('en').findings) as (keyof Facts)[];
/** German words are longer. */
const MOST_LETTERS = { en: 200, de: 230 } as const;

describe.each(LANGUAGES.flatMap((language) => KINDS.map((kind) => [language, kind] as const)))(
  'the words (%s) for %s',
  (language, kind) => {
    const most = MOST_LETTERS[language];

    it('are one or two plain sentences, whatever the facts', () => {
      fc.assert(
        fc.property(FACTS[kind] as fc.Arbitrary<unknown>, (facts) => {
          const { text, practice } = saidOfKind(language, kind, facts);
          expect(text).not.toMatch(SLIPS);
          expect(text).not.toMatch(JARGON);
          expect(text).toMatch(/^[A-ZÄÖÜ\d].*\.$/);
          expect(text.split(/[.!?](?:\s|$)/).filter((sentence) => sentence !== '').length).toBeLessThanOrEqual(2);
          expect(text.length).toBeLessThan(most);
          if (language === 'en') expect(text).not.toMatch(/\ba [AEF]\b|\ban [BCDG]\b/);
          if (kind === 'went-well') {
            expect(practice).toBe('');
            return;
          }
          expect(practice).toMatch(/^[A-ZÄÖÜ].*\.$/);
          expect(practice).not.toMatch(SLIPS);
          expect(practice).not.toMatch(JARGON);
          expect(practice.length).toBeLessThan(most);
        }),
        { numRuns: 60 },
      );
    });
  },
);

describe('the sentence about the other bars', () => {
  it.each([
    [['6'], 'The same happens in bar 6.'],
    [['6', '14'], 'The same happens in bars 6 and 14.'],
    [['6', '9', '14'], 'The same happens in bars 6, 9 and 14.'],
  ])('for %j', (bars, sentence) => {
    expect(wordsIn('en').otherBars.also(bars)).toBe(sentence);
  });

  it('stands after what was heard, and is left out where there are none', () => {
    const facts = { notes: 3, tuplet: true, which: 0, share: 0.46, written: 1 / 3 };
    const place = { kind: 'uneven-group', criterion: 'rhythm', weight: 'fix', bar: '9', pass: 1, facts } as const;
    const told = (alsoInBars: string[], perhapsInBars: string[]) =>
      tellFinding(wordsIn('en'), { ...place, alsoInBars, perhapsInBars }).text.replace(/^.*?33\./, '…');
    expect(told([], [])).toBe('…');
    expect(told(['6'], [])).toBe('… The same happens in bar 6.');
    expect(told(['6'], ['12', '14'])).toBe('… The same happens in bar 6. Listen to bars 12 and 14 as well.');
  });
});
