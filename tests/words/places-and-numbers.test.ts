import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spokenNote } from '../../src/words/en/names.js';
import { wordsIn } from '../../src/words/words-in.js';

const {
  date: dateInWords,
  finding: wordsFor,
  measured: measuredInWords,
  number: numberInWords,
  place: placeInWords,
} = wordsIn('en');

describe('dates', () => {
  // Reference: the Intl formatter of the runtime (Unicode CLDR, British English).
  it('are written as British English writes them', () => {
    const format = new Intl.DateTimeFormat('en-GB', {
      day: 'numeric',
      month: 'long',
      year: 'numeric',
      timeZone: 'UTC',
    });
    const day = fc.date({ min: new Date('1900-01-01'), max: new Date('2099-12-31'), noInvalidDate: true });
    fc.assert(
      fc.property(day, (date) => {
        expect(dateInWords(date.toISOString().slice(0, 10))).toBe(format.format(date));
      }),
    );
  });

  it('that are no dates stay as they are', () => {
    expect(dateInWords('last week')).toBe('last week');
    expect(dateInWords('2026-13-01')).toBe('2026-13-01');
  });
});

describe('places', () => {
  const at = { kind: 'accidental', bar: '12', pass: 1 } as const;

  // Common practice: bar and beat, beats counted from 1; later times through a repeat are named.
  it('are said as players say them', () => {
    expect(placeInWords({ ...at, beat: 3 })).toBe('Bar 12, beat 3');
    expect(placeInWords({ ...at, beat: 2.5 })).toBe('Bar 12, beat 2½');
    expect(placeInWords({ ...at, beat: 4.3333 })).toBe('Bar 12, beat 4⅓');
    expect(placeInWords({ ...at, beat: 1.2 })).toBe('Bar 12, beat after 1');
    expect(placeInWords({ ...at, beat: 2.9999 })).toBe('Bar 12, beat 3');
    expect(placeInWords({ ...at, toBar: '14' })).toBe('Bars 12–14');
    expect(placeInWords({ ...at, toBar: '12', beat: 1, pass: 2 })).toBe('Bar 12, beat 1 (second time)');
    expect(placeInWords({ ...at, kind: 'tuning-off' })).toBe('The whole take');
  });
});

describe('numbers', () => {
  it('carry a true minus sign, and zero carries none', () => {
    expect(numberInWords(-12.34, 1)).toBe('−12.3');
    expect(numberInWords(-0.01, 1)).toBe('0');
    expect(numberInWords(96, 1)).toBe('96');
  });

  // 100 cents to the semitone (definition); about 1 dB is the smallest level difference noticed (Slade et al. 2022, on piano tones).
  it('say what they mean to a listener where that is known', () => {
    expect(measuredInWords({ value: 24.6, unit: 'cents' })).toBe('25 cents, about a quarter of a semitone');
    expect(measuredInWords({ value: 0.6, unit: 'dB', expected: 'at least 3 dB' })).toBe(
      '0.6 dB, less than a listener can tell apart; expected at least 3 dB',
    );
    expect(measuredInWords({ value: 4.04, unit: 'dB' })).toBe('4 dB');
  });

  it('say late or early, faster or slower, high or low instead of a sign', () => {
    expect(measuredInWords({ value: -0.2, unit: 's', expected: 'on the beat' }, 'early-entry')).toBe(
      '0.2 s early; expected on the beat',
    );
    expect(measuredInWords({ value: 0.2, unit: 's' }, 'late-entry')).toBe('0.2 s late');
    expect(measuredInWords({ value: -12, unit: '%' }, 'dragging')).toBe('12 % slower');
    expect(measuredInWords({ value: 13, unit: '%' }, 'rushing')).toBe('13 % faster');
    expect(measuredInWords({ value: -14, unit: 'cents' }, 'note-out-of-tune')).toBe('14 cents too low');
    expect(measuredInWords({ value: -4, unit: 'dB' }, 'weak-hairpin')).toBe('4 dB softer');
  });
});

// Source: common practice.
describe('names of notes in English sentences', () => {
  it.each([
    ['G', 'G'],
    ['D♯', 'D sharp'],
    ['B♭', 'B flat'],
    ['E♭♭', 'E double flat'],
    ['F𝄪', 'F double sharp'],
    ['B♮', 'B natural'],
  ])('%s is said %s', (name, said) => {
    expect(spokenNote(name)).toBe(said);
  });
});

describe('headings', () => {
  it('name the misreading of an accidental', () => {
    const carried = wordsFor({ kind: 'accidental', misreading: 'carried-past-barline' });
    expect(carried.headline).toMatch(/past the barline/);
    expect(carried.headline).not.toBe(wordsFor({ kind: 'accidental' }).headline);
  });
});
