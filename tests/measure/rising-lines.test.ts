import { describe, expect, it } from 'vitest';
import { type MeasureContext, measureTake, type RisingLineMeasure } from '../../src/measure/index.js';
import type { Part } from '../../src/score/index.js';
import { crescendo, dynamic, type NoteSketch, smallPart } from '../demo/small-part.js';
import { handContext, playEvenly } from '../helpers/hand-context.js';
import { hearTake } from '../helpers/heard-take.js';

/** Four times up a fifth in five notes and down again in four: lines from notes 0, 8, 16 and 24 on. */
const MIDI = [60, 62, 64, 65, 67, 65, 64, 62];
const NOTES: readonly NoteSketch[] = Array.from({ length: 32 }, (_, i) => ({ midi: MIDI[i % 8]!, quarters: 1 }));
const MARKED = { dynamics: [dynamic('mf', 0, 0, 31)] };
const PART = smallPart(NOTES, MARKED);

function lines(context: MeasureContext): readonly RisingLineMeasure[] {
  const { risingLines } = measureTake(context);
  if ('notMeasured' in risingLines) throw new Error(risingLines.notMeasured.code);
  return risingLines;
}
const firsts = (part: Part): number[] => lines(handContext(part, playEvenly(part))).map(({ index }) => index);
const changed = (change: (i: number) => Partial<NoteSketch>): Part =>
  smallPart(
    NOTES.map((note, i) => ({ ...note, ...change(i) })),
    MARKED,
  );

describe('rising lines', () => {
  it('keep their level where it is kept', () => {
    const found = lines(handContext(PART, playEvenly(PART)));
    expect(found.map(({ index, toIndex, semitones, slurred }) => [index, toIndex, semitones, slurred])).toEqual([
      [0, 4, 7, false],
      [8, 12, 7, false],
      [16, 20, 7, false],
      [24, 28, 7, false],
    ]);
    for (const { changeDb } of found) expect(changeDb).toBeCloseTo(0, 6);
  });

  it('thin out beside the player’s others by what they lose', () => {
    // 2 dB softer with every note: the last two lie 3 notes above the first two
    const notes = playEvenly(PART).map((n) =>
      n.index >= 8 && n.index <= 12 ? { ...n, levelDb: -24 - 2 * (n.index - 8) } : n,
    );
    const [, thin, ...others] = lines(handContext(PART, notes));
    expect(thin!.changeDb).toBeLessThan(-4);
    expect(thin!.changeDb).toBeGreaterThan(-6.5);
    for (const { changeDb } of others) expect(Math.abs(changeDb)).toBeLessThan(2);
  });

  it('are no rising lines where a register is softer by itself', () => {
    const notes = playEvenly(PART).map((n) => ({ ...n, levelDb: -24 - (n.playedMidi - 60) }));
    // 5 dB of level; a pitch leans on its neighbours as well, so that no more than a quarter of it may be left
    for (const { changeDb } of lines(handContext(PART, notes))) expect(Math.abs(changeDb)).toBeLessThan(1.25);
  });

  it('are told with their slur', () => {
    const slurred = changed((i) => ({ slurredFromPrevious: i % 8 > 0, slurredToNext: i % 8 < 7 }));
    expect(lines(handContext(slurred, playEvenly(slurred))).every((line) => line.slurred)).toBe(true);
  });
});

describe('what is no line', () => {
  it('is one with a rest, an accent or a repeated note in it, or less than a fifth', () => {
    expect(firsts(changed((i) => ({ rest: i === 10 ? 1 : 0, restBeforeQuarters: i === 10 ? 1 : 0 })))).toEqual([
      0, 16, 24,
    ]);
    expect(firsts(changed((i) => ({ articulations: i === 10 ? ['accent'] : [] })))).toEqual([0, 16, 24]);
    expect(firsts(changed((i) => (i === 10 ? { midi: 62, soundingMidi: 62 } : {})))).toEqual([0, 16, 24]);
    expect(firsts(changed((i) => (i === 12 ? { midi: 66, soundingMidi: 66 } : {})))).toEqual([0, 16, 24]);
  });

  it('is one under a hairpin, or with a mark within', () => {
    expect(firsts(smallPart(NOTES, { ...MARKED, hairpins: [crescendo(8, 12, 8, 12)] }))).toEqual([0, 16, 24]);
    const dynamics = [dynamic('mf', 0, 0, 9), dynamic('p', 10, 10, 31)];
    expect(firsts(smallPart(NOTES, { dynamics }))).toEqual([0, 16, 24]);
  });

  it('is one in which a note was not played', () => {
    const notes = playEvenly(PART).map((n) => (n.index === 10 ? { ...n, status: 'left-out' as const } : n));
    expect(lines(handContext(PART, notes)).map(({ index }) => index)).toEqual([0, 16, 24]);
  });

  it('cannot be told where nobody knows how loud the instrument is by itself', () => {
    const few = smallPart(NOTES.slice(0, 8), { dynamics: [dynamic('mf', 0, 0, 7)] });
    const { risingLines } = measureTake(handContext(few, playEvenly(few)));
    expect(risingLines).toEqual({ notMeasured: { code: 'registers-unknown', facts: {} } });
  });
});

describe('on takes of the synthesiser', () => {
  it.each(['clarinet', 'flute', 'brass'] as const)('a %s thins out in one line, not in the others', (voice) => {
    const [, thin, ...others] = lines(hearTake(PART, { voice, faults: [{ kind: 'thin', from: 8, to: 12, db: 8 }] }));
    // three quarters of 8 dB, less what is taken for the instrument's own
    expect(thin!.changeDb).toBeLessThan(-3.5);
    expect(thin!.changeDb).toBeGreaterThan(-7);
    for (const { changeDb } of others) expect(Math.abs(changeDb)).toBeLessThan(2.5);
  });
});
