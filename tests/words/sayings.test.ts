import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LANGUAGES, notMeasured } from '../../src/base/index.js';
import type { ContrastsHeard } from '../../src/judge/criterion-sayings.js';
import { contrastsSaying } from '../../src/judge/dynamics-sayings.js';
import { judgeTake } from '../../src/judge/index.js';
import { tempoSaying, tuningSaying } from '../../src/judge/pitch-and-tempo-sayings.js';
import { type Measurements, measureTake } from '../../src/measure/index.js';
import { STANDARDS } from '../../src/standards/index.js';
import { handContext, playEvenly } from '../helpers/hand-context.js';
import { lineOf, said as toldIn } from '../helpers/said.js';
import { samplePart } from '../helpers/sample-review.js';

const PART = samplePart(8);

type Contrast = Measurements['contrasts'][number];
type Hairpin = Measurements['hairpins'][number];

const step = (from: string, to: string, differenceDb: Contrast['differenceDb'], own = differenceDb): Contrast => {
  return { from, to, index: 4, bar: '2', pass: 1, differenceDb, registerAdjustedDb: own };
};
const hairpin = (kind: Hairpin['kind'], riseDb: number): Hairpin => {
  const rise = { riseDb, registerAdjustedRiseDb: riseDb, slopeDbPerBar: riseDb, slopeDbPerSecond: riseDb };
  return { kind, index: 1, toIndex: 3, bar: '1', toBar: '1', pass: 1, errorDb: 0.1, ...rise };
};

/** The line on dynamics of an even take in which these changes were measured. */
function dynamics(contrasts: readonly Contrast[], hairpins: readonly Hairpin[] = [], language: 'en' | 'de' = 'en') {
  const context = handContext(PART, playEvenly(PART));
  const measurements = { ...measureTake(context), contrasts, hairpins };
  const { criteria } = toldIn(judgeTake({ part: PART, alignment: context.alignment, measurements }), language);
  return criteria.find((line) => line.criterion === 'dynamics')!.summary;
}

// The music first, then the number. The least size is the standard: 3 dB (see src/judge/standards).
describe('the line on dynamics', () => {
  it('says what a listener hears, then by how much', () => {
    expect(STANDARDS.contrastLeast.value).toBe(3);
    expect(dynamics([step('p', 'f', 9), step('f', 'p', -12), step('p', 'f', 10)])).toBe(
      'soft and loud differ well at all 3 changes, usually by 10 dB (3 dB is enough)',
    );
    expect(dynamics([step('p', 'f', 9), step('f', 'p', -1.26), step('p', 'f', 8)])).toBe(
      'soft and loud differ well at 2 of 3 changes; at the weakest place by 1.2 dB, and it takes 3 dB',
    );
    expect(dynamics([step('p', 'f', 0.4), step('f', 'p', -0.9)])).toBe(
      'soft and loud sound nearly alike at all 2 changes: they differ usually by less than 1 dB, and it takes 3 dB',
    );
    expect(dynamics([step('p', 'f', 9), step('f', 'p', 5)])).toBe(
      'soft and loud differ well at 1 of 2 changes, once the wrong way round',
    );
    expect(dynamics([step('p', 'f', -8)])).toBe('soft and loud come the wrong way round at the one change of dynamics');
  });

  it('counts hairpins apart from steps', () => {
    expect(dynamics([], [hairpin('crescendo', 5), hairpin('diminuendo', -1)])).toBe('1 of 2 hairpins plain to hear');
    expect(dynamics([step('p', 'f', 9)], [hairpin('diminuendo', -6)])).toMatch(/; the hairpin is plain$/);
  });

  // 2.96 rounds to 3.0, which is what is asked for: a number must not contradict the words.
  it('never rounds what falls short up to what is asked for', () => {
    expect(dynamics([step('p', 'f', 2.96), step('f', 'p', -9)])).toContain(
      'at the weakest place by 2.9 dB, and it takes 3 dB',
    );
    expect(dynamics([step('p', 'f', 3), step('f', 'p', -3)])).toContain('usually by 3 dB');
  });

  it('takes out what the instrument does by itself, as the judge does', () => {
    expect(dynamics([step('p', 'f', 9, 2), step('f', 'p', -9, -9)])).toContain('at the weakest place by 2 dB');
  });

  it('leaves out what was not measured', () => {
    const gap = notMeasured('too-few-under-mark', { mark: 'f' });
    expect(dynamics([step('p', 'f', gap), step('f', 'p', -9)])).toMatch(/at the one change of dynamics, by 9 dB/);
    expect(dynamics([step('p', 'f', gap)])).toBe('no change of level to measure');
  });

  it('is German where the pages are', () => {
    expect(dynamics([step('p', 'f', 9), step('f', 'p', -1.5), step('p', 'f', 8)], [], 'de')).toBe(
      'laut und leise sind an 2 von 3 Stellen klar verschieden; an der schwächsten um 1,5 dB, 3 dB braucht es',
    );
  });
});

describe.each(LANGUAGES)('the lines of the criteria (%s)', (language) => {
  const db = fc.double({ min: -20, max: 20, noNaN: true });
  const heard: fc.Arbitrary<ContrastsHeard> = fc
    .tuple(fc.integer({ min: 1, max: 40 }), fc.nat(40), fc.nat(40), db, db)
    .map(([of, plain, reversed, usualDb, smallestDb]) => {
      const good = Math.min(of, plain);
      return { of, plain: good, reversed: Math.min(reversed, of - good), usualDb, smallestDb, leastDb: 3 };
    });

  it('begin with words and hold no slip, whatever was heard', () => {
    fc.assert(
      fc.property(heard, (facts) => {
        const line = lineOf(language, contrastsSaying(facts));
        expect(line).toMatch(/^(?:soft and loud|laut und leise) /);
        expect(line).not.toMatch(/undefined|NaN|\s{2}|[-−]0(?![.,]?\d*[1-9])|\d[.,]\d{2}/);
        expect(line.length).toBeLessThan(140);
      }),
    );
  });

  it('name a tempo by what it is to the marked one', () => {
    const said = [92, 94, 96, 110, 78].map(
      (played) => lineOf(language, tempoSaying(played, 92, 'quarter')).split(':')[0],
    );
    expect(said).toEqual(
      language === 'en'
        ? ['as marked', 'as marked', 'a little faster than marked', 'faster than marked', 'slower than marked']
        : [
            'wie es dasteht',
            'wie es dasteht',
            'etwas schneller, als es dasteht',
            'schneller, als es dasteht',
            'langsamer, als es dasteht',
          ],
    );
    expect(lineOf(language, tempoSaying(78, null, 'quarter'))).toMatch(/78/);
    // 78 quarters are 52 dotted quarters
    expect(lineOf(language, tempoSaying(78, 90, 'dotted-quarter'))).toMatch(
      language === 'en'
        ? /52 dotted quarters a minute, 60 marked/
        : /52 punktierte Viertel in der Minute, 60 stehen da/,
    );
  });

  // 10 cents are just noticed (Hill & Summers 2007).
  it('call a tuning off only where that can be heard', () => {
    const said = [0.3, 1, -9, 24].map((cents) => lineOf(language, tuningSaying(440 * 2 ** (cents / 1200), cents)));
    expect(said).toEqual(
      language === 'en'
        ? [
            'tuned to A = 440 Hz',
            'well tuned to A = 440 Hz; 1 cent high, hardly to be heard',
            'well tuned to A = 440 Hz; 9 cents low, hardly to be heard',
            'tuned too high: 24 cents, and listeners notice 10 (A = 446.1 Hz)',
          ]
        : [
            'auf A = 440 Hz gestimmt',
            'gut auf A = 440 Hz gestimmt; 1 Cent zu hoch, kaum zu hören',
            'gut auf A = 440 Hz gestimmt; 9 Cent zu tief, kaum zu hören',
            'zu hoch gestimmt: 24 Cent, ab 10 hört man es (A = 446,1 Hz)',
          ],
    );
  });

  it('say of breaths where they were and where none was heard', () => {
    const breaths = (heardAt: number, of: number) =>
      lineOf(language, { code: 'breaths-heard', facts: { heard: heardAt, of } });
    expect([breaths(6, 11), breaths(5, 5), breaths(1, 1), breaths(1, 2), breaths(0, 3)]).toEqual(
      language === 'en'
        ? [
            '6 of 11 breaths were where they are marked; at 5 places none was heard: see whether you need the air there',
            'all 5 breaths were where they are marked',
            'the breath was where it is marked',
            '1 of 2 breaths was where it is marked; at 1 place none was heard: see whether you need the air there',
            'no breath was heard where they are marked: see whether you need the air there',
          ]
        : [
            'an 6 von 11 Atemzeichen geatmet; an 5 war nichts zu hören: Prüf, ob du dort Luft brauchst',
            'geatmet, wo die 5 Atemzeichen stehen',
            'geatmet, wo das Atemzeichen steht',
            'an 1 von 2 Atemzeichen geatmet; an 1 war nichts zu hören: Prüf, ob du dort Luft brauchst',
            'kein Atmen an den 3 Atemzeichen zu hören: Prüf, ob du dort Luft brauchst',
          ],
    );
  });

  it('name only what happened', () => {
    const restarts = (count: number) => ({ code: 'restarts', facts: { count } }) as const;
    const skips = (count: number) => ({ code: 'skips', facts: { count } }) as const;
    expect(lineOf(language, restarts(1))).toBe(language === 'en' ? 'begun again once' : 'einmal neu begonnen');
    expect(lineOf(language, skips(2))).toBe(language === 'en' ? 'jumped ahead twice' : 'zweimal nach vorn gesprungen');
    expect(lineOf(language, restarts(3), skips(1))).toMatch(/3.*, /);
  });
});
