import { describe, expect, it } from 'vitest';
import { type MeasureContext, measureTake, type ReleaseMeasure } from '../../src/measure/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { handContext, playEvenly } from '../helpers/hand-context.js';
import { hearTake } from '../helpers/heard-take.js';

/** Eight quarters of a second each, a rest after the fourth. */
const QUARTERS: readonly NoteSketch[] = [60, 64, 62, 67, 65, 69, 64, 60].map((midi, i) => ({
  midi,
  quarters: 1,
  rest: i === 4 ? 1 : 0,
}));
const PART = smallPart(QUARTERS);

function releases(context: MeasureContext): readonly ReleaseMeasure[] {
  const measured = measureTake(context).releases;
  if ('notMeasured' in measured) throw new Error(measured.notMeasured.code);
  return measured;
}

/** The end of each note dies away by so many dB a second. */
function dyingAway(dbPerSecond: number): MeasureContext {
  const context = handContext(PART, playEvenly(PART));
  const { features, alignment } = context;
  for (const { offsetSeconds = 0 } of alignment.notes) {
    const first = Math.round(offsetSeconds / features.levelHopSeconds);
    for (let f = 0; f < 49 && first + f < features.power.length; f++) {
      features.power[first + f] = 10 ** ((-24 - dbPerSecond * f * features.levelHopSeconds) / 10);
    }
  }
  return context;
}

describe('how notes are let go', () => {
  it('is told of those before a silence of a tenth of a second', () => {
    const notes = playEvenly(PART).map((note) => (note.index === 1 ? { ...note, offset: note.onset + 0.95 } : note));
    expect(releases(handContext(PART, notes)).map(({ index }) => index)).toEqual([0, 2, 3, 4, 5, 6, 7]);
  });

  it('takes no longer than a frame where the tone stops at once, and its pitch stays', () => {
    for (const { fallSeconds, pitchCents = 0 } of releases(handContext(PART, playEvenly(PART)))) {
      expect(fallSeconds).toBeLessThanOrEqual(0.01);
      expect(pitchCents).toBeCloseTo(0, 3);
    }
  });

  it('takes as long as the tone takes to fall', () => {
    // from 3 to 20 dB below at 250 dB a second: 68 ms
    for (const { fallSeconds } of releases(dyingAway(250))) expect(Math.abs(fallSeconds - 0.068)).toBeLessThan(0.006);
  });

  it('is left out of notes that are slurred on, short, or not played', () => {
    const part = smallPart(
      QUARTERS.map((note, i) => ({
        ...note,
        slurredToNext: i === 1,
        slurredFromPrevious: i === 2,
        quarters: i === 4 ? 0.3 : 1,
      })),
    );
    const notes = playEvenly(part).map((n) => (n.index === 6 ? { ...n, status: 'left-out' as const } : n));
    expect(releases(handContext(part, notes)).map(({ index }) => index)).toEqual([0, 2, 3, 5, 7]);
  });

  it('is not told in a room that rings', () => {
    const part = smallPart(QUARTERS.map((note, i) => ({ ...note, rest: i % 2 })));
    const wet = measureTake(hearTake(part, { roomSeconds: 1.8, signalToNoiseDb: 70 }));
    expect(wet.recording.reverberationSeconds).toBeGreaterThan(0.9);
    expect(wet.releases).toEqual({ notMeasured: { code: 'room-rings', facts: {} } });
  });
});

describe('on takes of the synthesiser', () => {
  it.each(['clarinet', 'flute', 'brass'] as const)(
    'a %s ends a note slowly, another at once, and one sinking',
    (voice) => {
      const part = smallPart(QUARTERS.map((note) => ({ ...note, rest: 1 })));
      const faults = [
        { kind: 'release', at: 1, seconds: 0.3, cents: 0 },
        { kind: 'release', at: 3, seconds: 0.01, cents: 0 },
        { kind: 'release', at: 5, seconds: 0.3, cents: 60 },
      ] as const;
      const found = new Map(releases(hearTake(part, { voice, faults, roomSeconds: 0 })).map((one) => [one.index, one]));
      // half a cosine: 3 dB below it is at acos(2 · 0.708 − 1) = 0.364 of its time, 20 dB below at 0.795
      expect(Math.abs(found.get(1)!.fallSeconds - 0.431 * 0.3)).toBeLessThan(0.02);
      expect(found.get(3)!.fallSeconds).toBeLessThan(0.015);
      expect(Math.abs(found.get(1)!.pitchCents!)).toBeLessThan(6);
      // 12 dB below it is at 0.667, its last frames a little before: of 60 cents about 37
      expect(found.get(5)!.pitchCents).toBeLessThan(-28);
      expect(found.get(5)!.pitchCents).toBeGreaterThan(-44);
    },
  );
});
