import { describe, expect, it } from 'vitest';
import type { TakeResult } from '../../src/result/index.js';
import { MEASURE_IDS } from '../../src/standards/index.js';
import { figuresOf } from '../../src/weeks/figures-of.js';
import { loudnessRank } from '../../src/weeks/loudness-rank.js';
import { MEASURES } from '../../src/weeks/measures.js';
import { atTempo, takeOfWeeks } from '../helpers/weeks.js';

const figures = (changed: Partial<TakeResult>) => figuresOf(takeOfWeeks({ changed }).result);

const place = { index: 0, toIndex: 1, bar: '1', pass: 1 };
const third = 1 / 3;

// Expected numbers are worked out by hand from the definitions in the manual.
describe('the numbers of one take', () => {
  it('exist for every measure, as a number or with the reason why not', () => {
    const all = figures({});
    expect(Object.keys(all).sort()).toEqual([...MEASURE_IDS].sort());
    expect(MEASURES.map(({ id }) => id)).toEqual([...MEASURE_IDS]);
    expect(figures({ groups: undefined } as never).evenness).toHaveProperty('notMeasured');
  });

  it('evenness: how far the note farthest off is, on average over the groups', () => {
    const groups = [
      { ...place, shares: [0.48, 0.26, 0.26], written: [third, third, third] },
      { ...place, shares: [third, third, third], written: [third, third, third] },
    ];
    expect(figures({ groups }).evenness).toBeCloseTo((100 * (0.48 - third)) / 2, 9);
  });

  it('long notes and breath: medians of the take, or why there are none', () => {
    const steadiness = { wobbleCents: 3.2, intervalCents: [2.8, 3.6], count: 9, vibratoCount: 1 };
    const breathNoise = { harmonicsToNoiseDb: 31.5, intervalDb: [30, 33], count: 9, notes: [] };
    const kept = figures({ steadiness, breathNoise });
    expect([kept['long-notes'], kept['breath-noise']]).toEqual([3.2, 31.5]);
    const older = figures({ steadiness: undefined, breathNoise: undefined } as never);
    const hissing = figures({ breathNoise: { notMeasured: 'noise', code: 'recording-hisses' } });
    expect(older['long-notes']).toEqual({ notMeasured: { code: 'number-not-kept', facts: {} } });
    expect(older['breath-noise']).toEqual({ notMeasured: { code: 'number-not-kept', facts: {} } });
    expect(hissing['breath-noise']).toMatchObject({ notMeasured: { code: 'recording-hisses' } });
  });

  it('brightness: median of the long notes, where the brief asks for the sound', () => {
    const note = { index: 0, bar: '1', pass: 1, levelDb: -20, oddOverEvenDb: 3, tristimulus: [0.5, 0.3, 0.2] };
    const notes = [2.2, 2.6, 4].map((centroidHarmonics) => ({ ...note, centroidHarmonics }));
    const withLoudness = { notMeasured: 'alike', code: 'loud-and-soft-alike' };
    expect(figures({ toneColour: { notes, withLoudness } }).brightness).toBe(2.6);
    expect(figures({ toneColour: undefined }).brightness).toEqual({
      notMeasured: { code: 'brief-without-sound', facts: {} },
    });
    const rings = { notMeasured: 'rings', code: 'room-rings' };
    expect(figures({ toneColour: rings }).brightness).toMatchObject({ notMeasured: { code: 'room-rings' } });
  });

  it('entries: early counts as late does', () => {
    const entries = [0.1, -0.05].map((lateSeconds) => ({
      index: 3,
      bar: '2',
      pass: 1,
      lateSeconds,
      secondsAQuarter: 0.6,
    }));
    expect(figures({ entries }).entries).toBeCloseTo(75, 9);
  });

  it('fermatas: the one farthest from twice, by ratio', () => {
    const fermata = { index: 3, bar: '2', pass: 1, writtenSeconds: 1, heldSeconds: 2 };
    const of = (...ratios: number[]) => figures({ fermatas: ratios.map((ratio) => ({ ...fermata, ratio })) }).fermatas;
    // 0.9 is farther from 2 than 3.6 is: 2 / 0.9 = 2.2 against 3.6 / 2 = 1.8
    expect([of(1.7, 3.3), of(3.6, 0.9)]).toEqual([3.3, 0.9]);
  });

  it('tempo and steadiness: percent of the mark, and the spread of the bars', () => {
    const bars = [98, 99, 100, 101, 102].map((quarterBpm, i) => ({
      bar: `${i}`,
      pass: 1,
      startQuarters: i,
      quarterBpm,
    }));
    const { tempo, steadiness } = figures({ tempo: { markedQuarterBpm: 80, playedQuarterBpm: 100, bars } });
    expect(tempo).toBe(125);
    // Rousseeuw & Croux 1993: the median distance from the median is 1, times 1.4826.
    expect(steadiness).toBeCloseTo(1.4826, 6);
    expect(figures({ tempo: { markedQuarterBpm: null, playedQuarterBpm: 100, bars } }).tempo).toHaveProperty(
      'notMeasured',
    );
  });

  it('contrast: positive when it goes the way that is asked for', () => {
    const contrast = { index: 3, bar: '2', pass: 1, differenceDb: 0 };
    const contrasts = [
      { ...contrast, from: 'p', to: 'f', registerAdjustedDb: 10 },
      { ...contrast, from: 'f', to: 'p', registerAdjustedDb: -12 },
      { ...contrast, from: 'mf', to: 'mp', registerAdjustedDb: 2 },
    ];
    expect(figures({ contrasts }).contrast).toBe(10);
    expect(figures({ contrasts: contrasts.slice(2) }).contrast).toBe(-2);
    expect(figures({ contrasts: [] }).contrast).toHaveProperty('notMeasured');
  });

  // Order of the marks: common practice.
  it('knows the order of the dynamic marks', () => {
    const marks = ['ppp', 'pp', 'p', 'mp', 'mf', 'f', 'ff', 'fff'];
    expect(marks.toSorted((a, b) => loudnessRank(a) - loudnessRank(b))).toEqual(marks);
    expect(loudnessRank('sfz')).toBeNaN();
  });

  it('hairpins: positive when they go the way that is asked for, without what the registers do', () => {
    const hairpin = {
      index: 0,
      toIndex: 9,
      bar: '1',
      toBar: '2',
      pass: 1,
      riseDb: 1,
      slopeDbPerBar: 1,
      slopeDbPerSecond: 1,
    };
    const hairpins = [
      { ...hairpin, kind: 'crescendo' as const, registerAdjustedRiseDb: 6 },
      { ...hairpin, kind: 'diminuendo' as const, registerAdjustedRiseDb: -8 },
    ];
    expect(figures({ hairpins }).hairpins).toBe(7);
  });

  it('slurs, staccato and breaths: shares of what is asked for', () => {
    const from = (asked: 'slur' | 'staccato' | 'breath', gapSeconds: number, soundedShare: number) => ({
      ...{ index: 0, toIndex: 1 },
      ...{ asked, gapSeconds, soundedShare },
    });
    const transitions = [
      ...[from('slur', 0, 1), from('slur', 0.01, 1), from('slur', 0.2, 0.6), from('slur', 0, 1)],
      ...[from('staccato', 0.2, 0.4), from('staccato', 0.2, 0.5), from('staccato', 0, 0.9)],
      ...[from('breath', 0.4, 0.6), from('breath', 0.01, 1)],
    ];
    const { slurs, staccato, breaths } = figures({ transitions });
    expect([slurs, staccato, breaths]).toEqual([75, 50, 50]);
    const none = figures({ transitions: [] });
    for (const figure of [none.slurs, none.staccato, none.breaths]) expect(figure).toHaveProperty('notMeasured');
  });

  it('notes in tune: within what nine of ten held notes lie, sharp or flat', () => {
    const [note] = takeOfWeeks().result.notes;
    if (note === undefined) throw new Error('no note');
    const notes = Array.from({ length: 11 }, (_, i) => ({
      ...note,
      ...{ index: i, onset: i, offset: i + 0.5, status: 'as-written' as const },
      centsFromOwnTuning: i % 2 === 0 ? i : -i,
    }));
    const short = { ...notes[0], offset: 0.1, centsFromOwnTuning: 99 } as (typeof notes)[number];
    // Hyndman & Fan 1996, definition 7: of 0, 1, … 10 the nine-tenths quantile is 9.
    expect(figures({ notes: [...notes, short] })['own-tuning']).toBe(9);
    expect(figures({ notes: notes.slice(0, 9) })['own-tuning']).toHaveProperty('notMeasured');
  });

  it('stops: restarts and jumps', () => {
    const restarts = [{ stoppedAtBar: '4', resumedAtBar: '3', onset: 9 }];
    const skips = [{ fromBar: '6', toBar: '8', fromIndex: 40, toIndex: 50, onset: 20 }];
    expect([figures({}).stops, figures({ restarts, skips }).stops, figures(atTempo(90)).stops]).toEqual([0, 2, 0]);
  });
});
