import { describe, expect, it } from 'vitest';
import { notMeasured } from '../../src/base/index.js';
import { changeOf } from '../../src/judge/judges/dynamics.js';
import { judgeTempo } from '../../src/judge/judges/tempo.js';
import type { BarTempo, HairpinMeasure } from '../../src/measure/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { judged, judgeInput } from '../helpers/judged.js';

/**
 * Stretches that run ahead or sink, bar by bar, and a tempo off its mark; worked out by hand.
 *
 * Source: definition; seven in a hundred is a drift, as the standard has it with its source.
 */
const QUARTERS: readonly NoteSketch[] = Array.from({ length: 24 }, (_, i) => ({
  midi: 60 + ((7 * i) % 12),
  quarters: 1,
}));
const PART = smallPart(QUARTERS);
const PLACE = { bar: '3', pass: 1 };

describe('bars that run ahead or sink', () => {
  const bars = (...bpm: readonly number[]): BarTempo[] =>
    bpm.map((quarterBpm, i) => ({ bar: String(i + 1), pass: 1, startQuarters: 4 * i, quarterBpm }));
  const told = (...bpm: readonly number[]) => {
    const tempo = { markedQuarterBpm: null, playedQuarterBpm: 100, bars: bars(...bpm) };
    return judgeTempo(judgeInput(PART, { measurements: { tempo } })).map(
      ({ kind, bar, toBar, measured }) => `${kind} ${bar}–${toBar} ${Math.round(measured!.value)}`,
    );
  };

  it('are three in a row, to the last bar', () => {
    expect(told(100, 112, 112, 112, 100)).toEqual(['rushing 2–4 12']);
    expect(told(100, 100, 112, 112, 112)).toEqual(['rushing 3–5 12']);
    expect(told(88, 88, 88)).toEqual(['dragging 1–3 -12']);
    expect(told(100, 112, 112, 100, 112)).toEqual([]);
  });

  it('are two stretches where the way turns', () => {
    expect(told(112, 112, 112, 88, 88, 88)).toEqual(['rushing 1–3 12', 'dragging 4–6 -12']);
    expect(told(112, 112, 88, 88)).toEqual([]);
    expect(told(88, 112, 112, 112)).toEqual(['rushing 2–4 12']);
  });

  it('are told by their median', () => {
    expect(told(100, 108, 110, 130, 100)).toEqual(['rushing 2–4 10']);
  });

  it('are eight or more where the tempo changes evenly all through, and no stretch stands out', () => {
    // from 95 to 105 in steps of 10 / 7 and of 10 / 6
    const even = (count: number) => Array.from({ length: count }, (_, i) => 95 + (10 * i) / (count - 1));
    expect(told(...even(8))).toEqual(['rushing 1–8 10']);
    expect(told(...even(7))).toEqual([]);
    expect(told(...even(8).reverse())).toEqual(['dragging 1–8 -10']);
  });

  it('are told as stretches where there are some', () => {
    expect(told(90, 90, 90, 100, 100, 100, 110, 110, 110)).toEqual(['dragging 1–3 -10', 'rushing 7–9 10']);
  });

  it('are no change all through where the bars scatter', () => {
    expect(told(90, 106, 94, 110, 90, 106, 94, 110)).toEqual([]);
  });
});

describe('a tempo off the mark', () => {
  const off = (playedQuarterBpm: number, markedQuarterBpm: number | null, beats = 4, beatType = 4) => {
    const part = { ...PART, bars: PART.bars.map((bar) => ({ ...bar, beats, beatType })) };
    const tempo = { markedQuarterBpm, playedQuarterBpm, bars: [] };
    return judgeTempo(judgeInput(part, { measurements: { tempo } })).map(({ measured, size, bar, facts }) => {
      return { value: measured!.value, unit: measured!.unit, expected: measured!.expected, size, bar, facts };
    });
  };

  it('is told in the beats of the metre', () => {
    expect(off(120, 150)).toEqual([
      {
        ...{ value: 120, unit: 'quarter notes a minute', expected: { code: 'about', facts: { value: 150 } } },
        ...{ size: expect.closeTo(0.6, 9), bar: '1', facts: { played: 120, marked: 150, beat: 'quarter' } },
      },
    ]);
    // a dotted quarter is one and a half quarters: 120 quarters are 80 of them, 150 are 100
    expect(off(120, 150, 6, 8)).toMatchObject([
      {
        ...{ value: 80, unit: 'dotted quarters a minute', expected: { code: 'about', facts: { value: 100 } } },
        facts: { played: 120, marked: 150 },
      },
    ]);
  });

  it('is told where the part begins, in an upbeat of one note', () => {
    const upbeat = { ...PART, notes: PART.notes.map((n) => (n.index === 0 ? { ...n, bar: '0', pass: 3 } : n)) };
    const measurements = {
      tempo: { markedQuarterBpm: 100, playedQuarterBpm: 80, bars: [] },
      tuning: { centsFromA440: 30, a4Hz: 447.7 },
    };
    const found = judged(upbeat, { measurements }).findings;
    const begin = found.filter(({ kind, bar }) => kind === 'off-tempo' || kind === 'tuning-off' || bar === '0');
    expect(begin.map(({ kind, bar, pass }) => [kind, bar, pass]).slice(0, 2)).toEqual([
      ['tuning-off', '0', 3],
      ['off-tempo', '0', 3],
    ]);
    // praise of the take as a whole stands there, too
    expect(begin.slice(2).map(({ kind }) => kind)).toContain('went-well');
  });

  it('is none where no tempo is marked', () => {
    expect(off(120, null)).toEqual([]);
  });
});

describe('a change from mark to mark', () => {
  const contrast = (from: string, to: string, db = 6) =>
    changeOf({ from, to, index: 8, ...PLACE, differenceDb: db, registerAdjustedDb: 0.5 * db });

  it('goes the way the marks go', () => {
    const rising = ['pppp', 'ppp', 'pp', 'p', 'mp', 'mf', 'f', 'ff', 'fff', 'ffff'];
    rising.slice(1).forEach((to, k) => {
      expect(contrast(rising[k]!, to)).toEqual({ direction: 1, raw: 6, adjusted: 3 });
      expect(contrast(to, rising[k]!)).toEqual({ direction: -1, raw: -6, adjusted: -3 });
    });
    expect(contrast('f', 'f')).toBeNull();
  });

  it('is as it is where the registers are not known', () => {
    const why = notMeasured('registers-unknown');
    expect(changeOf({ from: 'p', to: 'f', index: 8, ...PLACE, differenceDb: 6, registerAdjustedDb: why })).toEqual({
      direction: 1,
      raw: 6,
      adjusted: 6,
    });
  });

  it('goes up in a crescendo and down in a diminuendo', () => {
    const wedge = (kind: 'crescendo' | 'diminuendo'): HairpinMeasure => ({
      ...{ kind, index: 4, toIndex: 11, bar: '2', toBar: '3', pass: 1, riseDb: 4 },
      ...{ registerAdjustedRiseDb: 2, slopeDbPerBar: 2, slopeDbPerSecond: 1 },
    });
    expect(changeOf(wedge('crescendo'))).toEqual({ direction: 1, raw: 4, adjusted: 2 });
    expect(changeOf(wedge('diminuendo'))).toEqual({ direction: -1, raw: -4, adjusted: -2 });
  });
});
