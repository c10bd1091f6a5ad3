import { describe, expect, it } from 'vitest';
import { type MeasureContext, measureTake } from '../../src/measure/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { handContext, playEvenly } from '../helpers/hand-context.js';
import { demoPart, hearTake } from '../helpers/heard-take.js';

/** Sixteen quarters under one slur: steps, and a fifth after every note of an odd number from 1 to 13. */
const SLURRED: readonly NoteSketch[] = Array.from({ length: 16 }, (_, i) => ({
  midi: 60 + (i % 2 === 0 ? i : i + (i < 14 ? 7 : 0)),
  quarters: 1,
  slurredToNext: i < 15,
  slurredFromPrevious: i > 0,
}));
const STEPS: readonly NoteSketch[] = SLURRED.map((note, i) => ({ ...note, midi: 60 + (i % 3) }));

/** Lets the level fall for 20 ms where a note begins. */
function dip(context: MeasureContext, index: number, db: number): void {
  const { features, alignment } = context;
  const from = Math.round(alignment.notes[index]!.onsetSeconds! / features.levelHopSeconds);
  for (let f = from; f < from + 10; f++) features.power[f] = features.power[f]! * 10 ** (-db / 10);
}

function measured(notes: readonly NoteSketch[], dipOf: (index: number) => number) {
  const part = smallPart(notes);
  const context = handContext(part, playEvenly(part));
  for (let i = 1; i < notes.length; i++) dip(context, i, dipOf(i));
  const { slurredAir } = measureTake(context);
  if ('notMeasured' in slurredAir) throw new Error(slurredAir.notMeasured.code);
  return slurredAir;
}

describe('the air under slurs', () => {
  it('does not dip where the level stays', () => {
    const air = measured(STEPS, () => 0);
    expect(air).toMatchObject({ count: 15 });
    expect(air.dipDb).toBeCloseTo(0, 3);
  });

  it('dips by the median of what it dips', () => {
    // 0, 1, … 14 dB: the median is 7
    const air = measured(STEPS, (index) => index - 1);
    expect(air.dipDb).toBeCloseTo(7, 1);
    expect(air.intervalDb[0]).toBeLessThan(7);
    expect(air.intervalDb[1]).toBeGreaterThan(7);
    expect(air.steps).toBeUndefined();
  });

  it('is told for steps and leaps apart where there are enough of both', () => {
    const leap = (index: number) => Math.abs(SLURRED[index]!.midi - SLURRED[index - 1]!.midi) >= 5;
    const leaps = SLURRED.filter((_, i) => i > 0 && leap(i)).length;
    const air = measured([...SLURRED, ...STEPS], (index) => (index < 16 && leap(index) ? 6 : 1));
    expect(air.leaps).toMatchObject({ count: leaps });
    expect(air.leaps?.dipDb).toBeCloseTo(6, 1);
    expect(air.steps?.dipDb).toBeCloseTo(1, 1);
  });

  it('is not told for too few slurred notes, or in a wet room', () => {
    const few = smallPart(STEPS.slice(0, 6));
    const { slurredAir } = measureTake(handContext(few, playEvenly(few)));
    expect(slurredAir).toEqual({ notMeasured: { code: 'no-slurs', facts: {} } });
    const part = smallPart(STEPS.map((note, i) => ({ ...note, rest: i === 0 || i % 5 > 0 ? 0 : 1 })));
    const wet = measureTake(hearTake(part, { roomSeconds: 1.8, signalToNoiseDb: 70 }));
    expect(wet.recording.reverberationSeconds).toBeGreaterThan(0.9);
    expect(wet.slurredAir).toEqual({ notMeasured: { code: 'room-rings', facts: {} } });
  });
});

describe('a player whose air pulses', () => {
  it.each(['clarinet', 'flute', 'brass'] as const)('is heard to: %s', (voice) => {
    const part = demoPart();
    const slurred = part.notes.filter(({ slurredFromPrevious }) => slurredFromPrevious);
    const air = (db: number) => {
      const faults = slurred.map(({ index }) => ({ kind: 'pulse', at: index, db }) as const);
      const { slurredAir } = measureTake(hearTake(part, { voice, faults: db === 0 ? [] : faults }));
      if ('notMeasured' in slurredAir) throw new Error(slurredAir.notMeasured.code);
      return slurredAir.dipDb;
    };
    expect(air(0)).toBeLessThan(2);
    expect(air(6)).toBeGreaterThan(4);
    expect(air(6)).toBeLessThan(8);
  });
});
