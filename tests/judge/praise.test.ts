import { describe, expect, it } from 'vitest';
import { notMeasured } from '../../src/base/index.js';
import { judgePraise } from '../../src/judge/judges/praise.js';
import type { HairpinMeasure, Measurements } from '../../src/measure/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { type JudgedOptions, judgeInput } from '../helpers/judged.js';

/**
 * What is praised and what is not any more, on both sides of what praise needs.
 *
 * Source: working values of the praise itself, typed here by hand: six decibels, five, 97 of 100, three of four, three, six.
 */
const QUARTERS: readonly NoteSketch[] = Array.from({ length: 24 }, (_, i) => ({
  midi: 60 + ((7 * i) % 12),
  quarters: 1,
}));
const PART = smallPart(QUARTERS);
const PLACE = { bar: '3', pass: 1 };

describe('praise', () => {
  const about = (measurements: Partial<Measurements>, more: JudgedOptions = {}, part = PART) =>
    judgePraise(judgeInput(part, { ...more, measurements })).map(
      ({ facts }) => (facts as { about: { what: string } }).about,
    );
  /** Nothing of this take is praised. */
  const bare: Partial<Measurements> = {
    ...{ contrasts: [], hairpins: [], fermatas: [], notes: [] },
    tempo: notMeasured('too-few-bars'),
  };
  const wrong = { status: 'other-pitch', playedMidi: 90 } as const;
  const few = { 1: wrong, 3: wrong };
  const none = (measurements: Partial<Measurements>, more: JudgedOptions = {}, part = PART) =>
    about({ ...bare, ...measurements }, { aligned: few, ...more }, part);

  it('is of notes where 97 of 100 are right, grace notes left out', () => {
    const many = smallPart(Array.from({ length: 100 }, (_, i) => ({ midi: 60 + (i % 12), quarters: 1 })));
    const slips = (count: number) => Object.fromEntries(Array.from({ length: count }, (_, k) => [7 * k, wrong]));
    expect(about(bare, { aligned: slips(3) }, many)).toEqual([{ what: 'notes', right: 97, of: 100 }]);
    expect(about(bare, { aligned: slips(4) }, many)).toEqual([]);
    const graced = { ...many, notes: many.notes.map((n) => (n.index === 7 ? { ...n, grace: true } : n)) };
    expect(about(bare, { aligned: slips(3) }, graced)).toEqual([{ what: 'notes', right: 97, of: 99 }]);
  });

  it('is of accidentals where there are three that invite a misreading, and all are right', () => {
    const traps = (count: number, kind: 'dropped-within-bar' | 'key-signature-forgotten' = 'dropped-within-bar') =>
      smallPart(
        QUARTERS.map((n, i) =>
          i >= 8 && i < 8 + count ? { ...n, misreadings: [{ kind, writtenMidi: 90, soundingMidi: 90 }] } : n,
        ),
      );
    expect(none({}, {}, traps(3))).toEqual([{ what: 'accidentals', count: 3 }]);
    expect(none({}, {}, traps(2))).toEqual([]);
    expect(none({}, {}, traps(3, 'key-signature-forgotten'))).toEqual([]);
    expect(none({}, { aligned: { ...few, 9: wrong } }, traps(3))).toEqual([]);
  });

  it('is of the largest contrast between soft and loud that goes the right way', () => {
    const contrast = (from: string, to: string, differenceDb: number, index: number) => {
      return { from, to, index, ...PLACE, differenceDb, registerAdjustedDb: differenceDb };
    };
    const contrasts = [
      contrast('p', 'f', 7, 4),
      contrast('f', 'p', -9, 8),
      contrast('p', 'f', -20, 12),
      contrast('f', 'p', 20, 16),
      contrast('mf', 'f', 20, 18),
      contrast('pp', 'mp', 20, 20),
    ];
    expect(none({ contrasts })).toEqual([{ what: 'contrast', from: 'f', to: 'p', db: 9 }]);
    const recording = { ...judgeInput(PART).measurements.recording, levelRiding: true };
    expect(none({ contrasts, recording })).toEqual([]);
  });

  it('is of the largest hairpin from five decibels on', () => {
    const wedge = (kind: 'crescendo' | 'diminuendo', riseDb: HairpinMeasure['riseDb'], index: number) => ({
      ...{ kind, index, toIndex: index + 3, bar: '2', toBar: '3', pass: 1, riseDb },
      ...{ registerAdjustedRiseDb: riseDb, slopeDbPerBar: 2, slopeDbPerSecond: 1 },
    });
    const why = notMeasured('too-few-in-hairpin');
    expect(none({ hairpins: [wedge('crescendo', 5, 4)] })).toEqual([{ what: 'hairpin', kind: 'crescendo', db: 5 }]);
    expect(
      none({ hairpins: [wedge('crescendo', 4.9, 4), wedge('diminuendo', 9, 8), wedge('crescendo', why, 12)] }),
    ).toEqual([]);
    const best = [wedge('crescendo', 6, 4), wedge('diminuendo', -8, 8), wedge('crescendo', 7, 12)];
    expect(none({ hairpins: best })).toEqual([{ what: 'hairpin', kind: 'diminuendo', db: 8 }]);
    const recording = { ...judgeInput(PART).measurements.recording, levelRiding: true };
    expect(none({ hairpins: best, recording })).toEqual([]);
  });

  it('is of a steady tempo over six bars, nine of ten within three in a hundred', () => {
    const tempo = (bpm: readonly number[]) => ({
      ...{ markedQuarterBpm: 100, playedQuarterBpm: 100 },
      bars: bpm.map((quarterBpm, i) => ({ bar: String(i + 1), pass: 1, startQuarters: 4 * i, quarterBpm })),
    });
    const even = Array.from({ length: 11 }, () => 100);
    expect(none({ tempo: tempo([100, 100, 100, 100, 100, 100]) })).toEqual([
      { what: 'steady-tempo', quarterBpm: 100, beat: 'quarter', percent: 0 },
    ]);
    expect(none({ tempo: tempo([100, 100, 100, 100, 100]) })).toEqual([]);
    // of eleven the second largest is the one below which nine of ten lie
    expect(none({ tempo: tempo([150, 102, ...even.slice(2)]) })).toEqual([
      { what: 'steady-tempo', quarterBpm: 100, beat: 'quarter', percent: expect.closeTo(2, 9) },
    ]);
    expect(none({ tempo: tempo([150, 104, ...even.slice(2)]) })).toEqual([]);
  });

  it('is of fermatas that are all within their limits, told at the only one', () => {
    const fermatas = (...ratios: readonly number[]) =>
      ratios.map((ratio, k) => ({ index: 5 + k, ...PLACE, writtenSeconds: 1, heldSeconds: ratio, ratio }));
    expect(none({ fermatas: fermatas(1.25, 3) })).toEqual([{ what: 'fermatas', count: 2 }]);
    expect(none({ fermatas: fermatas(1.24, 2) })).toEqual([]);
    expect(none({ fermatas: fermatas(2, 3.01) })).toEqual([]);
    expect(none({ fermatas: [] })).toEqual([]);
    const at = (...ratios: readonly number[]) =>
      judgePraise(judgeInput(PART, { measurements: { ...bare, fermatas: fermatas(...ratios) }, aligned: few })).map(
        ({ bar, beat, index }) => [bar, beat, index],
      );
    expect(at(2)).toEqual([['2', 2, 5]]);
    expect(at(2, 2)).toEqual([['1', undefined, undefined]]);
  });

  it('is of tuning from six notes on, three of four of them within ten cents', () => {
    const notes = (...cents: readonly number[]) =>
      cents.map((c, index) => ({ index, cents: c, centsFromOwnTuning: c, levelDb: -24 }));
    expect(none({ notes: notes(0, 0, 0, 0, -10, 40) })).toEqual([
      { what: 'intonation', share: expect.closeTo(5 / 6, 9), cents: 10 },
    ]);
    expect(none({ notes: notes(0, 0, 0, 0, 0) })).toEqual([]);
    expect(none({ notes: notes(0, 0, 0, 10, 10, 10, 11, -11) })).toHaveLength(1);
    expect(none({ notes: notes(0, 0, 0, 10, 10, 11, 11, -11) })).toEqual([]);
  });

  it('is at most three things, the rarest first', () => {
    const notes = Array.from({ length: 8 }, (_, index) => ({ index, cents: 0, centsFromOwnTuning: 0, levelDb: -24 }));
    const fermatas = [{ index: 5, ...PLACE, writtenSeconds: 1, heldSeconds: 2, ratio: 2 }];
    const whole = about({ contrasts: [], hairpins: [], fermatas, notes });
    expect(whole.map(({ what }) => what)).toEqual(['steady-tempo', 'fermatas', 'intonation']);
    expect(about({ contrasts: [], hairpins: [], fermatas: [], notes }).map(({ what }) => what)).toEqual([
      'steady-tempo',
      'intonation',
      'notes',
    ]);
  });
});
