import { describe, expect, it } from 'vitest';
import { notMeasured } from '../../src/base/index.js';
import { measureTake } from '../../src/measure/index.js';
import type { Part } from '../../src/score/index.js';
import { crescendo, dynamic, smallPart } from '../demo/small-part.js';
import { type HandNote, handContext, playEvenly } from '../helpers/hand-context.js';

const measured = (part: Part, change: (note: HandNote) => Partial<HandNote>) =>
  measureTake(
    handContext(
      part,
      playEvenly(part).map((note) => ({ ...note, ...change(note) })),
    ),
  );

const eightEach = (midi: (i: number) => number): Part =>
  smallPart(
    Array.from({ length: 16 }, (_, i) => ({ midi: midi(i), quarters: 1 })),
    { dynamics: [dynamic('p', 0, 0, 7), dynamic('f', 32 / 4, 8, 15)] },
  );

describe('levels and contrasts', () => {
  const part = eightEach((i) => 60 + (i % 8));

  it('are exact when the playing is', () => {
    const { levels, contrasts } = measured(part, ({ index }) => ({ levelDb: index < 8 ? -34 : -22.5 }));
    expect(levels.map((l) => l.mark)).toEqual(['p', 'f']);
    expect(levels[0]!.levelDb).toBeCloseTo(-34, 3);
    expect(levels[1]!.levelDb).toBeCloseTo(-22.5, 3);
    expect(contrasts).toHaveLength(1);
    expect(contrasts[0]).toMatchObject({ from: 'p', to: 'f', index: 8 });
    expect(contrasts[0]!.differenceDb).toBeCloseTo(11.5, 3);
    expect(contrasts[0]!.registerAdjustedDb).toBeCloseTo(11.5, 2);
    expect(contrasts[0]!.intervalDb![0]).toBeCloseTo(11.5, 2);
    expect(contrasts[0]!.intervalDb![1]).toBeCloseTo(11.5, 2);
  });

  it('are 0 when nothing changes, negative when it goes the other way', () => {
    expect(measured(part, () => ({})).contrasts[0]!.differenceDb).toBeCloseTo(0, 3);
    const reversed = measured(part, ({ index }) => ({ levelDb: index < 8 ? -20 : -26 }));
    expect(reversed.contrasts[0]!.differenceDb).toBeCloseTo(-6, 3);
  });

  it('are not moved by one accent or one cracked note', () => {
    const odd: Record<number, number> = { 3: -12, 11: -60 };
    const { contrasts } = measured(part, ({ index }) => ({ levelDb: odd[index] ?? (index < 8 ? -34 : -24) }));
    expect(contrasts[0]!.differenceDb).toBeCloseTo(10, 1);
  });

  it('have a wider interval the more the notes scatter, with the truth inside', () => {
    // as many notes above as below; their own spread is known
    const spread = (db: number) =>
      measured(part, ({ index }) => ({ levelDb: (index < 8 ? -34 : -24) + db * ((index % 4) - 1.5) })).contrasts[0]!;
    const [narrow, wide] = [spread(0.4), spread(2)].map((c) => c.intervalDb as readonly [number, number]);
    expect(wide![1] - wide![0]).toBeGreaterThan(3 * (narrow![1] - narrow![0]));
    for (const [low, high] of [narrow!, wide!]) {
      expect(low).toBeLessThan(10);
      expect(high).toBeGreaterThan(10);
    }
  });

  it('have the instrument’s own loud and soft registers taken out', () => {
    // p lies mostly low and f mostly high, where the instrument is 5 dB louder by itself; some pitches recur under both
    const mixed = smallPart(
      [60, 62, 64, 65, 60, 62, 64, 70, 70, 72, 71, 60, 72, 70, 64, 72].map((midi) => ({ midi, quarters: 1 })),
      { dynamics: [dynamic('p', 0, 0, 7), dynamic('f', 8, 8, 15)] },
    );
    const { contrasts } = measured(mixed, ({ index, playedMidi }) => ({
      levelDb: (index < 8 ? -34 : -26) + (playedMidi >= 68 ? 5 : 0),
    }));
    // the player means 8 dB; what the microphone hears is 13
    expect(contrasts[0]!.differenceDb).toBeCloseTo(13, 2);
    expect(Math.abs((contrasts[0]!.registerAdjustedDb as number) - 8)).toBeLessThan(1.5);
  });

  it('are not measured under a mark of which hardly a note was heard, and the reason names the mark', () => {
    const { levels, contrasts } = measured(part, ({ index }) => (index > 8 ? { status: 'left-out' as const } : {}));
    expect(levels[1]!.levelDb).toHaveProperty('notMeasured');
    expect(contrasts[0]!.differenceDb).toEqual(notMeasured('too-few-under-mark', { mark: 'f' }));
    expect(contrasts[0]).not.toHaveProperty('intervalDb');
  });

  it('have no register curve from a handful of notes', () => {
    const short = smallPart(
      [60, 62, 64, 65, 67, 69].map((midi) => ({ midi, quarters: 1 })),
      { dynamics: [dynamic('p', 0, 0, 2), dynamic('f', 3, 3, 5)] },
    );
    const { contrasts } = measured(short, ({ index }) => ({ levelDb: index < 3 ? -30 : -20 }));
    expect(contrasts[0]!.differenceDb).toBeCloseTo(10, 3);
    expect(contrasts[0]!.registerAdjustedDb).toHaveProperty('notMeasured');
  });

  it('are none between equal marks, and none in a part without marks', () => {
    const same = { ...part, dynamics: [dynamic('mf', 0, 0, 7), dynamic('mf', 8, 8, 15)] };
    expect(measured(same, () => ({})).contrasts).toEqual([]);
    expect(measured({ ...part, dynamics: [] }, () => ({})).levels).toEqual([]);
  });
});

describe('crescendo and diminuendo', () => {
  /** Nine quarters under a wedge of two bars of four. */
  const part = smallPart(
    Array.from({ length: 12 }, (_, i) => ({ midi: 60 + (i % 5), quarters: 1 })),
    { hairpins: [crescendo(0, 8, 0, 8)] },
  );
  const rise = (levelDb: (index: number) => number, more: (note: HandNote) => Partial<HandNote> = () => ({})) =>
    measured(part, (note) => ({ levelDb: levelDb(note.index), ...more(note) })).hairpins[0]!;

  it('rise by what they rise, per bar and per second', () => {
    const hairpin = rise((i) => -30 + 1.5 * i);
    expect(hairpin).toMatchObject({ kind: 'crescendo', index: 0, toIndex: 8 });
    // eight steps of 1.5 dB; a bar is four quarters of one second
    expect(hairpin.riseDb).toBeCloseTo(12, 2);
    expect(hairpin.slopeDbPerBar).toBeCloseTo(6, 2);
    expect(hairpin.slopeDbPerSecond).toBeCloseTo(1.5, 3);
    expect(hairpin.errorDb).toBeLessThan(0.05);
  });

  it('may stand still or go the other way', () => {
    expect(rise(() => -25).riseDb).toBeCloseTo(0, 3);
    expect(rise((i) => -20 - 0.5 * i).riseDb).toBeCloseTo(-4, 2);
  });

  it('are not moved by one note that sticks out, and say how sure they are', () => {
    const hairpin = rise((i) => (i === 4 ? -10 : -30 + i));
    expect(Math.abs((hairpin.riseDb as number) - 8)).toBeLessThan(0.6);
    const rough = rise((i) => -30 + i + (i % 2 === 0 ? 2 : -2));
    expect(rough.errorDb!).toBeGreaterThan(0.5);
  });

  it('are measured over the notes that were heard', () => {
    const hairpin = rise(
      (i) => -30 + i,
      ({ index }) => (index === 3 || index === 4 ? { status: 'left-out' } : {}),
    );
    expect(hairpin.riseDb).toBeCloseTo(8, 2);
  });

  it('are not measured from fewer than three notes', () => {
    const hairpin = rise(
      (i) => -30 + i,
      ({ index }) => (index > 1 ? { status: 'left-out' } : {}),
    );
    for (const value of [
      hairpin.riseDb,
      hairpin.registerAdjustedRiseDb,
      hairpin.slopeDbPerBar,
      hairpin.slopeDbPerSecond,
    ]) {
      expect(value).toEqual(notMeasured('too-few-in-hairpin'));
    }
    expect(hairpin).not.toHaveProperty('errorDb');
  });
});
