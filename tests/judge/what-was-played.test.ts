import { describe, expect, it } from 'vitest';
import type { AlignedNote, Alignment } from '../../src/align/index.js';
import { whatWasPlayed } from '../../src/judge/what-was-played.js';
import type { Measurements } from '../../src/measure/index.js';
import type { Part } from '../../src/score/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { judgeInput } from '../helpers/judged.js';

/**
 * Which bars of a part were played, counted by hand: six bars of four quarters, notes 0 to 23.
 *
 * Source: definition: what was passed over or not come to was not played; a single note that was not heard was not passed over.
 */
const QUARTERS: readonly NoteSketch[] = Array.from({ length: 24 }, (_, i) => ({
  midi: 60 + ((7 * i) % 12),
  quarters: 1,
}));
const PART = smallPart(QUARTERS);
const OUT: Partial<AlignedNote> = { status: 'left-out', confidence: 0 };

/** Notes from one to another left out, both with them. */
const without = (...stretches: readonly (readonly [number, number])[]) =>
  Object.fromEntries(
    stretches.flatMap(([from, to]) => Array.from({ length: to - from + 1 }, (_, k) => [from + k, OUT] as const)),
  );
const skip = (fromIndex: number, toIndex: number): Alignment['skips'][number] => {
  return { fromIndex, toIndex, onsetSeconds: fromIndex + 0.5 };
};

function played(
  aligned: Readonly<Record<number, Partial<AlignedNote>>>,
  alignment: Partial<Alignment> = {},
  recording: Partial<Measurements['recording']> = {},
  part: Part = PART,
) {
  const input = judgeInput(part, { aligned, alignment });
  const { measurements } = input;
  const heard = { ...measurements, recording: { ...measurements.recording, ...recording } };
  const { notPlayed, bars } = whatWasPlayed({ ...input, measurements: heard });
  const stretches = bars.stretches.map(({ bar, toBar, pass }) => `${bar}–${toBar} in pass ${pass}`);
  return { ...bars, stretches, notPlayed: [...notPlayed].sort((a, b) => a - b) };
}

describe('a whole take', () => {
  it('is played from its first bar to its last', () => {
    expect(played({})).toEqual({
      played: 6,
      of: 6,
      stretches: ['1–6 in pass 1'],
      restarts: 0,
      ending: 'whole',
      notPlayed: [],
    });
  });

  it('is whole although single notes were not heard, the last one with them', () => {
    const { notPlayed, ending, stretches } = played(without([5, 5], [8, 11], [23, 23]));
    expect([notPlayed, ending, stretches]).toEqual([[], 'whole', ['1–6 in pass 1']]);
  });

  it('counts how often the player began again', () => {
    const restarts = [
      { stoppedAtIndex: 9, resumedAtIndex: 8, onsetSeconds: 10 },
      { stoppedAtIndex: 13, resumedAtIndex: 12, onsetSeconds: 20 },
    ];
    expect(played({}, { restarts }).restarts).toBe(2);
  });
});

describe('what was passed over', () => {
  it('is all that lies within', () => {
    const { notPlayed, played: count, stretches } = played(without([8, 11]), { skips: [skip(8, 11)] });
    expect(notPlayed).toEqual([8, 9, 10, 11]);
    expect([count, stretches]).toEqual([5, ['1–2 in pass 1', '4–6 in pass 1']]);
  });

  it('reaches as far as notes are left out on both sides, and no further', () => {
    const { notPlayed } = played(without([6, 13], [16, 16]), { skips: [skip(8, 11)] });
    expect(notPlayed).toEqual([6, 7, 8, 9, 10, 11, 12, 13]);
  });

  it('leaves a bar played of which one note was', () => {
    const { played: count, stretches } = played(without([5, 11]), { skips: [skip(5, 11)] });
    expect([count, stretches]).toEqual([5, ['1–2 in pass 1', '4–6 in pass 1']]);
  });

  it('goes on over a grace note that is unclear, and ends at another note that is', () => {
    const unclear = { status: 'unclear', confidence: 0 } as const;
    const aligned = { ...without([8, 11], [13, 13]), 12: unclear };
    const grace = smallPart(QUARTERS.map((note, i) => (i === 12 ? { ...note, grace: true } : note)));
    expect(played(aligned, { skips: [skip(8, 11)] }, {}, grace).notPlayed).toEqual([8, 9, 10, 11, 12, 13]);
    expect(played(aligned, { skips: [skip(8, 11)] }).notPlayed).toEqual([8, 9, 10, 11]);
  });

  it('was not passed over where the player began again right behind it', () => {
    const restart = (resumedAtIndex: number) => [{ stoppedAtIndex: 8, resumedAtIndex, onsetSeconds: 12 }];
    const skips = [skip(8, 11)];
    expect(played(without([8, 11]), { skips, restarts: restart(12) }).notPlayed).toEqual([]);
    expect(played(without([8, 11]), { skips, restarts: restart(11) }).notPlayed).toHaveLength(4);
    expect(played(without([8, 11]), { skips, restarts: restart(13) }).notPlayed).toHaveLength(4);
  });

  it('may be the beginning', () => {
    const { notPlayed, stretches, ending } = played(without([0, 7]), { skips: [skip(0, 7)] });
    expect(notPlayed).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
    expect([stretches, ending]).toEqual([['3–6 in pass 1'], 'whole']);
  });
});

describe('an end that is missing', () => {
  const end = (recording: Partial<Measurements['recording']> = {}) =>
    played(without([20, 23]), { skips: [skip(20, 23)] }, recording).ending;

  it('was not come to, unless the recording ends before the playing does', () => {
    expect(end()).toBe('broken-off');
    expect(end({ breaksOff: true })).toBe('cut-off');
    expect(end({ endsInSound: true })).toBe('cut-off');
  });

  it('is no matter of a recording that ends early where all was played', () => {
    expect(played({}, {}, { breaksOff: true, endsInSound: true }).ending).toBe('whole');
  });
});

describe('a bar without notes', () => {
  /** Bar 3 is a rest of a whole bar. */
  const resting = smallPart(QUARTERS.slice(0, 20).map((note, i) => (i === 8 ? { ...note, rest: 4 } : note)));

  it('goes with the bar before it', () => {
    expect(played(without([4, 7]), { skips: [skip(4, 7)] }, {}, resting).stretches).toEqual([
      '1–1 in pass 1',
      '4–6 in pass 1',
    ]);
    expect(played(without([8, 11]), { skips: [skip(8, 11)] }, {}, resting).stretches).toEqual([
      '1–3 in pass 1',
      '5–6 in pass 1',
    ]);
  });

  it('goes with the first note where it is the first', () => {
    const upbeat = smallPart(QUARTERS.slice(0, 20).map((note, i) => (i === 0 ? { ...note, rest: 4 } : note)));
    expect(played({}, {}, {}, upbeat).stretches).toEqual(['1–6 in pass 1']);
    expect(played(without([0, 3]), { skips: [skip(0, 3)] }, {}, upbeat).stretches).toEqual(['3–6 in pass 1']);
  });
});

describe('a part with a repeat', () => {
  /** Bars 1 to 3, and the same once more: performed bars 4 to 6 are printed 1 to 3. */
  const once = smallPart(QUARTERS);
  const again = {
    ...once,
    bars: once.bars.map((b, i) => ({ ...b, bar: String((i % 3) + 1), barIndex: i % 3, pass: i < 3 ? 1 : 2 })),
    notes: once.notes.map((n, i) => ({
      ...n,
      bar: String((Math.floor(i / 4) % 3) + 1),
      barIndex: Math.floor(i / 4) % 3,
      pass: i < 12 ? 1 : 2,
    })),
  };

  it('begins a new stretch where it goes back', () => {
    const { played: count, of, stretches } = played({}, {}, {}, again);
    expect([count, of, stretches]).toEqual([6, 6, ['1–3 in pass 1', '1–3 in pass 2']]);
  });

  it('leaves a pass out, and not the other', () => {
    const { played: count, stretches } = played(without([12, 15]), { skips: [skip(12, 15)] }, {}, again);
    expect([count, stretches]).toEqual([5, ['1–3 in pass 1', '2–3 in pass 2']]);
  });
});
