import { describe, expect, it } from 'vitest';
import { notMeasured } from '../../src/base/index.js';
import { measureTake, type TempoMeasure } from '../../src/measure/index.js';
import type { Part } from '../../src/score/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { type HandNote, handContext, playEvenly } from '../helpers/hand-context.js';

const QUARTERS: readonly NoteSketch[] = Array.from({ length: 24 }, (_, i) => ({
  midi: 60 + ((5 * i) % 12),
  quarters: 1,
}));
const PART = smallPart(QUARTERS);

const measured = (part: Part, notes: readonly HandNote[], alignment = {}) =>
  measureTake(handContext(part, notes, { alignment }));

/** Everything from a note on comes so much later. */
const later = (notes: readonly HandNote[], index: number, seconds: number): HandNote[] =>
  notes.map((note) =>
    note.index < index ? note : { ...note, onset: note.onset + seconds, offset: note.offset + seconds },
  );

describe('tempo', () => {
  // Source: definition: at 60 / s quarters a minute a quarter lasts s seconds.
  it.each([
    [1, 60],
    [0.625, 96],
    [0.5, 120],
  ])('of quarters of %d s is %d', (seconds, quarterBpm) => {
    const { tempo } = measured(PART, playEvenly(PART, seconds));
    expect(tempo).toMatchObject({ markedQuarterBpm: 60 });
    expect(tempo).toHaveProperty('playedQuarterBpm', expect.closeTo(quarterBpm, 6));
    for (const bar of (tempo as TempoMeasure).bars) expect(bar.quarterBpm).toBeCloseTo(quarterBpm, 6);
  });

  it('is told bar by bar', () => {
    // three bars at 60, then three at 80
    const onset = (q: number): number => 0.5 + (q <= 12 ? q : 12 + 0.75 * (q - 12));
    const notes = playEvenly(PART).map((note) => ({
      ...note,
      onset: onset(note.index),
      offset: onset(note.index + 0.9),
    }));
    const { tempo } = measured(PART, notes);
    const bars = (tempo as TempoMeasure).bars;
    for (const bar of bars) expect(bar.quarterBpm).toBeCloseTo(Number(bar.bar) <= 3 ? 60 : 80, 6);
    expect(bars.map((bar) => bar.bar)).toEqual(['1', '2', '3', '4', '5', '6']);
  });

  it('is not slowed by a fermata, a breath, a written ritardando or a restart', () => {
    const marked: Part = {
      ...smallPart(
        QUARTERS.map((note, i) => ({ ...note, fermata: i === 5, breathAfter: i === 10 ? ('breath' as const) : null })),
      ),
      tempoBends: [{ kind: 'slower', startQuarters: 14, endQuarters: 16 }],
    };
    let notes: readonly HandNote[] = playEvenly(marked);
    for (const [index, seconds] of [
      [6, 1.5],
      [11, 0.6],
      [15, 0.3],
      [16, 0.5],
      [20, 4],
    ] as const) {
      notes = later(notes, index, seconds);
    }
    const restarts = [{ stoppedAtIndex: 21, resumedAtIndex: 20, onsetSeconds: 27 }];
    const { tempo } = measured(marked, notes, { restarts });
    expect(tempo).toHaveProperty('playedQuarterBpm', expect.closeTo(60, 6));
    for (const bar of (tempo as TempoMeasure).bars) expect(bar.quarterBpm).toBeCloseTo(60, 6);
  });

  it('of a part that prints none is known, and nothing is said of the mark', () => {
    const silent = { ...PART, tempos: [{ atQuarters: 0, quarterBpm: 100, printed: false }] };
    expect(measured(silent, playEvenly(silent)).tempo).toMatchObject({ markedQuarterBpm: null });
  });

  it('is not measured from one bar', () => {
    const notes = playEvenly(PART).map((note) => (note.index < 4 ? note : { ...note, status: 'left-out' as const }));
    expect(measured(PART, notes).tempo).toHaveProperty('notMeasured');
  });
});

describe('a fermata', () => {
  const held = smallPart(QUARTERS.map((note, i) => ({ ...note, fermata: i === 12 })));
  const hold = (ratio: number, secondsAQuarter = 1): HandNote[] => {
    const notes = playEvenly(held, secondsAQuarter);
    const longer = later(notes, 13, (ratio - 0.9) * secondsAQuarter);
    return longer.map((note) => (note.index === 12 ? { ...note, offset: note.onset + ratio * secondsAQuarter } : note));
  };

  it.each([
    [1, 1],
    [2, 1],
    [2, 0.5],
    [3.5, 0.7],
  ])('held %d times its length at %d s a quarter has that ratio', (ratio, secondsAQuarter) => {
    const [fermata] = measured(held, hold(ratio, secondsAQuarter)).fermatas;
    expect(fermata).toMatchObject({ index: 12, bar: '4' });
    expect(fermata!.writtenSeconds).toBeCloseTo(secondsAQuarter, 6);
    expect(fermata!.heldSeconds).toBeCloseTo(ratio * secondsAQuarter, 6);
    expect(fermata!.ratio).toBeCloseTo(ratio, 6);
  });

  it('that was not heard is not measured, nor one without a tempo around it', () => {
    const silent = hold(2).map((note) => (note.index === 12 ? { ...note, status: 'left-out' as const } : note));
    expect(measured(held, silent).fermatas[0]!.ratio).toEqual(notMeasured('note-not-heard'));
    const alone = hold(2).map((note) =>
      note.index >= 12 && note.index < 15 ? note : { ...note, status: 'left-out' as const },
    );
    const [fermata] = measured(held, alone).fermatas;
    expect(fermata!.ratio).toHaveProperty('notMeasured');
    expect(fermata!.heldSeconds).toBeCloseTo(2, 6);
  });

  // Source: common practice: in a chorale a fermata shows the end of a line.
  it('is asked no length where four or more, one every six bars at most, close the phrases', () => {
    const chorale = (count: number) =>
      smallPart(QUARTERS.map((note, i) => ({ ...note, fermata: i % 5 === 4 && i < 5 * count })));
    const ratios = (part: typeof held) => measureTake(handContext(part, playEvenly(part))).fermatas.map((f) => f.ratio);
    expect(ratios(chorale(4))).toEqual(Array(4).fill({ notMeasured: { code: 'fermatas-close-phrases', facts: {} } }));
    for (const ratio of ratios(chorale(3))) expect(ratio).toBeCloseTo(0.9, 6);
  });

  it('is in the list when it is in the part', () => {
    expect(measured(PART, playEvenly(PART)).fermatas).toEqual([]);
  });
});
