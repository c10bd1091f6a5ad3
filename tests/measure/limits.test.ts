import { describe, expect, it } from 'vitest';
import { isMeasured } from '../../src/base/index.js';
import { type Measurements, measureTake } from '../../src/measure/index.js';
import type { Part } from '../../src/score/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { type HandNote, type HandOptions, handContext, playEvenly } from '../helpers/hand-context.js';

/**
 * What is still measured and what is not any more, on both sides of each measure's own limit, on takes played by hand: a quarter
 * lasts a second, the first note begins at 0.5 s, a note sounds nine tenths of its time, the floor lies at −80 dBFS.
 *
 * Source: the limits are working values, typed here by hand; the times follow from them and from the part.
 */
type Change = (note: HandNote) => Partial<HandNote>;
const SAME: Change = () => ({});

function measured(part: Part, change: Change = SAME, options: HandOptions = {}, extra: HandNote[] = []): Measurements {
  const notes = playEvenly(part).map((note) => ({ ...note, ...change(note) }));
  const sounding = [...notes, ...extra].sort((a, b) => a.onset - b.onset);
  const { alignment } = handContext(part, notes, options);
  return measureTake({ ...handContext(part, sounding, options), alignment });
}

const quarters = (count: number, at: Record<number, Partial<NoteSketch>> = {}) =>
  smallPart(Array.from({ length: count }, (_, i) => ({ midi: 60 + ((7 * i) % 12), quarters: 1, ...at[i] })));
/** All from one note on comes so much later. */
const later =
  (from: number, seconds: number): Change =>
  ({ index, onset, offset }) =>
    index < from ? {} : { onset: onset + seconds, offset: offset + seconds };

describe('a transition', () => {
  const from = (take: Measurements, index: number) => take.transitions.find((t) => t.index === index);

  it('is told up to eight seconds from onset to onset', () => {
    expect(from(measured(quarters(16), later(8, 6.9)), 7)).toBeDefined();
    expect(from(measured(quarters(16), later(8, 7.1)), 7)).toBeUndefined();
  });

  // Three notes have three pairs of onsets, four have six; four pairs are needed.
  it('has a pace from four pairs of onsets on', () => {
    expect(from(measured(quarters(3)), 0)!.expectedSeconds).toBeUndefined();
    expect(from(measured(quarters(4)), 0)!.expectedSeconds).toBeCloseTo(1, 9);
  });

  it('is interrupted only by what is added after its first note', () => {
    const added = (afterIndex: number) => [{ onsetSeconds: 5, offsetSeconds: 5.1, midi: 90, afterIndex }];
    const told = (afterIndex: number) =>
      from(measured(quarters(16), SAME, { alignment: { added: added(afterIndex) } }), 6);
    expect([5, 6, 7].map((index) => told(index) !== undefined)).toEqual([true, false, true]);
  });
});

describe('an entry', () => {
  it.each([
    [4, 1],
    [4.5, 0],
  ])('after a rest of %d quarters: %d told', (rest, count) => {
    expect(measured(quarters(20, { 10: { rest } })).entries).toHaveLength(count);
  });

  it('is not told after a fermata, nor where a rest is held', () => {
    expect(measured(quarters(20, { 9: { fermata: true }, 10: { rest: 1 } })).entries).toEqual([]);
    expect(measured(quarters(20, { 10: { rest: 1, heldRestBefore: true } })).entries).toEqual([]);
  });

  // Four notes have six pairs of onsets, which are enough; three have three.
  it('needs six pairs of onsets for its pace', () => {
    expect(measured(quarters(4, { 3: { rest: 1 } })).entries).toHaveLength(1);
    expect(measured(quarters(3, { 2: { rest: 1 } })).entries).toEqual([]);
  });

  // Four notes before the rest tell when it is due. One of them alone is early by 0.2 s: the median does not move.
  it('is due by the notes before the rest, not by one of them', () => {
    const part = quarters(20, { 10: { rest: 1 } });
    for (const index of [6, 7, 8, 9]) {
      const take = measured(part, (note) => (note.index === index ? { onset: note.onset - 0.2 } : {}));
      expect(Math.abs(take.entries[0]!.lateSeconds)).toBeLessThan(0.02);
    }
  });
});

describe('a fermata', () => {
  const ratios = (take: Measurements) => take.fermatas.filter((f) => isMeasured(f.ratio)).length;
  const at = (...indexes: number[]) => Object.fromEntries(indexes.map((i) => [i, { fermata: true }]));

  it('closes a phrase where there are four, at least one every six bars', () => {
    expect(ratios(measured(quarters(48, at(11, 23, 35))))).toBe(3);
    expect(ratios(measured(quarters(48, at(11, 23, 35, 47))))).toBe(0);
    // 24 bars are six each, 25 are more
    expect(ratios(measured(quarters(96, at(11, 35, 59, 83))))).toBe(0);
    expect(ratios(measured(quarters(100, at(11, 35, 59, 83))))).toBe(4);
  });
});

describe('a group', () => {
  const part = quarters(20, {
    ...Object.fromEntries(
      [8, 9, 10].map((i) => [
        i,
        { quarters: 1 / 3, tuplet: { group: 1, actualNotes: 3, normalNotes: 2, place: i - 8 } },
      ]),
    ),
  });
  const shareOfLast = (seconds: number) => measured(part, later(11, seconds)).groups[0]!.shares[2]!;

  // A triplet in one second: its last third grows with the note after it up to a quarter of a second, and no further.
  it('ends with the next note, where that is no more than a quarter of its length late', () => {
    expect(shareOfLast(0)).toBeCloseTo(1 / 3, 6);
    expect(shareOfLast(0.2)).toBeGreaterThan(0.42);
    expect(shareOfLast(0.3)).toBeLessThan(0.36);
  });

  it('ends where the pace puts it before a rest, a breath or a fermata', () => {
    const change = (more: Record<number, Partial<NoteSketch>>) =>
      smallPart(
        part.notes.map(({ soundingMidi, durationQuarters, tuplet, index }) => {
          return { midi: soundingMidi, quarters: durationQuarters, tuplet, ...more[index] };
        }),
      );
    for (const more of [{ 11: { rest: 1 } }, { 10: { breathAfter: 'breath' as const } }, { 10: { fermata: true } }]) {
      const [group] = measured(change(more), later(11, 0.2)).groups;
      expect(group!.shares[2]!).toBeLessThan(0.36);
    }
  });
});

describe('an accent', () => {
  const accented = (...plain: number[]) =>
    quarters(
      7,
      Object.fromEntries(
        [0, 1, 2, 3, 4, 5, 6].map((i) => [i, { articulations: plain.includes(i) ? [] : ['accent' as const] }]),
      ),
    );

  it('needs three notes without one among the three on each side', () => {
    const told = (...plain: number[]) => measured(accented(...plain)).accents.filter((a) => a.index === 3).length;
    expect([told(0, 6), told(0, 2, 6), told(1, 2, 4)]).toEqual([0, 1, 1]);
  });

  it('is compared with the three notes on each side and no others', () => {
    const part = quarters(12, { 6: { articulations: ['accent'] } });
    const over = (loud: number[]) =>
      measured(part, ({ index }) => (loud.includes(index) ? { levelDb: -14 } : {})).accents[0]!.spreadDb;
    expect(over([2, 10])).toBeCloseTo(0, 6);
    expect(over([3, 9])).toBeGreaterThan(5);
  });

  // A note of 0.3 s and longer has a last third to fall to.
  it.each([
    [0.29, false],
    [0.31, true],
  ])('on a note of %d s has a fall: %s', (seconds, falls) => {
    const part = quarters(12, { 6: { articulations: ['accent'] } });
    const change: Change = ({ index, onset }) => (index === 6 ? { offset: onset + seconds } : {});
    expect('fallDb' in measured(part, change).accents[0]!).toBe(falls);
  });
});

describe('a written rest', () => {
  /** Before the ninth note, at the first beat of bar 3, a rest of two: from 8.5 s to 10.5 s. */
  const part = quarters(20, { 8: { rest: 2 } });
  const [before] = playEvenly(part).filter(({ index }) => index === 7) as [HandNote];
  const stateWith = (sound: Partial<HandNote>) =>
    measured(part, SAME, {}, [{ ...before, playedMidi: 79, ...sound }]).rests[0]!.state;
  const from9 = (seconds: number, more: Partial<HandNote> = {}) =>
    stateWith({ onset: 9, offset: 9 + seconds, ...more });

  // A quarter of the 1.95 s before the next attack: 0.49 s.
  it('is played into by what lasts a quarter of it', () => {
    expect([from9(0.46), from9(0.52)]).toEqual(['silent', 'played-into']);
  });

  // Held at −24 dBFS, it counts to 12 dB below.
  it('is played into by what is no more than 12 dB softer than the note before', () => {
    expect(from9(0.8, { levelDb: -35 })).toBe('played-into');
    expect(from9(0.8, { levelDb: -37 })).toBe('silent');
  });

  // A floor of −36 dBFS: eight above it is −28.
  it('is played into by what is 8 dB above the floor', () => {
    const over = (levelDb: number) =>
      measured(part, SAME, { floorDb: -36 }, [{ ...before, playedMidi: 79, onset: 9, offset: 9.8, levelDb }]).rests[0]!
        .state;
    expect([over(-27), over(-29)]).toEqual(['played-into', 'silent']);
  });

  it('is rung over where the note before goes on through half of it', () => {
    const held = (seconds: number) =>
      measured(part, ({ index, onset }) => (index === 7 ? { offset: onset + 1 + seconds } : {})).rests[0]!.state;
    expect([held(0.9), held(1.05)]).toEqual(['silent', 'rung-over']);
  });

  it('is not played into by the next note, which comes early', () => {
    const next = { playedMidi: part.notes[8]!.soundingMidi };
    expect(stateWith({ ...next, onset: 9.8, offset: 10.5 })).not.toBe('played-into');
    expect(stateWith({ ...next, onset: 9.2, offset: 9.9 })).toBe('played-into');
  });

  it('was not taken at all where less than 0.4 of it is left', () => {
    const left = (seconds: number) => measured(part, later(8, seconds - 2)).rests.length;
    expect([left(0.6), left(0.85)]).toEqual([0, 1]);
  });

  it('is not looked at after a fermata, nor where the player began again', () => {
    expect(measured(quarters(20, { 7: { fermata: true }, 8: { rest: 2 } })).rests).toEqual([]);
    const restarts = (resumedAtIndex: number) => [{ stoppedAtIndex: 12, resumedAtIndex, onsetSeconds: 20 }];
    const told = (index: number) => measured(part, SAME, { alignment: { restarts: restarts(index) } }).rests.length;
    expect([told(8), told(15)]).toEqual([0, 1]);
  });
});

describe('the place of a missing note', () => {
  const out = (index: number): Change => {
    return (note) => (note.index === index ? { status: 'left-out', confidence: 1 } : {});
  };

  it('needs a note that was heard on each side, and no new beginning at it', () => {
    const part = quarters(16);
    expect(measured(part, out(8)).emptyPlaces).toHaveLength(1);
    const two: Change = (note) => ({ ...out(8)(note), ...out(9)(note) });
    expect(measured(part, two).emptyPlaces).toEqual([]);
    const restarts = (resumedAtIndex: number) => [{ stoppedAtIndex: 12, resumedAtIndex, onsetSeconds: 12 }];
    const told = (at: number) => measured(part, out(8), { alignment: { restarts: restarts(at) } }).emptyPlaces.length;
    expect([told(7), told(8), told(9), told(10)]).toEqual([1, 0, 0, 1]);
  });
});
