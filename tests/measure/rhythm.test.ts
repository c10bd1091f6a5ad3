import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureTake } from '../../src/measure/index.js';
import type { Part } from '../../src/score/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { type HandNote, handContext, playEvenly } from '../helpers/hand-context.js';

const quarter = (i: number): NoteSketch => ({ midi: 60 + ((7 * i) % 12), quarters: 1 });
const QUARTERS: readonly NoteSketch[] = Array.from({ length: 24 }, (_, i) => quarter(i));
const measured = (part: Part, notes: readonly HandNote[], alignment = {}) =>
  measureTake(handContext(part, notes, { alignment }));
const moved = (notes: readonly HandNote[], index: number, seconds: number): HandNote[] =>
  notes.map((note) => (note.index === index ? { ...note, onset: note.onset + seconds } : note));
const later = (notes: readonly HandNote[], index: number, seconds: number): HandNote[] =>
  notes.map((note) =>
    note.index < index ? note : { ...note, onset: note.onset + seconds, offset: note.offset + seconds },
  );

describe('how one note goes over into the next', () => {
  const part = smallPart(
    QUARTERS.map((note, i) => ({ ...note, slurredToNext: i === 6, slurredFromPrevious: i === 7 })),
  );
  const EVEN = playEvenly(part, 0.8);
  const from = (notes: readonly HandNote[], index: number, alignment = {}) =>
    measured(part, notes, alignment).transitions.find((t) => t.index === index);

  it('evenly: no gap under a slur, a tenth of the time between tongued notes', () => {
    expect(from(EVEN, 6)!.gapSeconds).toBeCloseTo(0, 9);
    expect(from(EVEN, 6)!.soundedShare).toBeCloseTo(1, 9);
    expect(from(EVEN, 3)!.gapSeconds).toBeCloseTo(0.08, 9);
    expect(from(EVEN, 3)!.soundedShare).toBeCloseTo(0.9, 9);
    for (const { betweenOnsetsSeconds, expectedSeconds, secondsAQuarter } of measured(part, EVEN).transitions) {
      expect(betweenOnsetsSeconds).toBeCloseTo(0.8, 9);
      expect(expectedSeconds).toBeCloseTo(0.8, 9);
      expect(secondsAQuarter).toBeCloseTo(0.8, 9);
    }
  });

  it('with a known gap: its length and the share that sounds', () => {
    const short = EVEN.map((note) => (note.index === 6 ? { ...note, offset: note.onset + 0.32 } : note));
    expect(from(short, 6)!.gapSeconds).toBeCloseTo(0.48, 9);
    // the level falls from −24 to the floor at −80 dBFS
    expect(from(short, 6)!.dipDb).toBeCloseTo(56, 1);
    expect(from(EVEN, 6)!.dipDb).toBeCloseTo(0, 1);
    // Source: Bresin & Battel 2000: about 40 % sounding is a staccato
    expect(from(short, 6)!.soundedShare).toBeCloseTo(0.4, 9);
  });

  it('with a wait: longer than the pace asks for', () => {
    const waited = from(later(EVEN, 10, 0.5), 9)!;
    // the local pace is read across the wait as well, which makes it a little slower, never faster
    const excess = waited.betweenOnsetsSeconds - waited.expectedSeconds!;
    expect(excess).toBeGreaterThan(0.45);
    expect(excess).toBeLessThanOrEqual(0.5 + 1e-6);
    expect(waited.gapSeconds).toBeCloseTo(0.58, 6);
  });

  it('is not told where a note is missing, something is added, or the player began again', () => {
    const out = EVEN.map((note) => (note.index === 6 ? { ...note, status: 'left-out' as const } : note));
    expect(from(out, 6)).toBeUndefined();
    const added = [{ onsetSeconds: 5.6, offsetSeconds: 5.7, midi: 70, afterIndex: 6 }];
    expect(from(EVEN, 6, { added })).toBeUndefined();
    const restarts = [{ stoppedAtIndex: 9, resumedAtIndex: 7, onsetSeconds: 6 }];
    expect(from(EVEN, 6, { restarts })).toBeUndefined();
    expect(from(EVEN, 3, { added, restarts })).toBeDefined();
  });
});

describe('groups of equal notes', () => {
  /** Four quarters, a triplet of eighths in one quarter, then quarters again. */
  const part = smallPart([
    ...QUARTERS.slice(0, 8),
    ...[0, 1, 2].map(
      (place): NoteSketch => ({
        midi: 60 + 2 * place,
        quarters: 1 / 3,
        tuplet: { group: 1, actualNotes: 3, normalNotes: 2, place },
      }),
    ),
    ...QUARTERS.slice(0, 8),
  ]);
  const EVEN = playEvenly(part);
  const triplet = (notes: readonly HandNote[]) => measured(part, notes).groups.find((g) => g.index === 8);

  it('played evenly have equal shares', () => {
    const group = triplet(EVEN)!;
    expect(group).toMatchObject({ index: 8, toIndex: 10, bar: '3', tuplet: true });
    expect(group.seconds).toBeCloseTo(1, 6);
    for (const share of group.shares) expect(share).toBeCloseTo(1 / 3, 6);
  });

  it('that lean on the first note have the shares they have', () => {
    // the usual slip: the triplet becomes an eighth and two sixteenths, 1/2 + 1/4 + 1/4
    const leaning = moved(moved(EVEN, 9, 1 / 2 - 1 / 3), 10, 3 / 4 - 2 / 3);
    const { shares } = triplet(leaning)!;
    expect(shares[0]!).toBeCloseTo(0.5, 6);
    expect(shares[1]!).toBeCloseTo(0.25, 6);
    expect(shares[2]!).toBeCloseTo(0.25, 6);
  });

  it('have shares that add up to 1 and do not change with the tempo', () => {
    const slip = fc.double({ min: -0.1, max: 0.1, noNaN: true });
    fc.assert(
      fc.property(slip, slip, fc.double({ min: 0.6, max: 1.8, noNaN: true }), (a, b, stretch) => {
        const notes = moved(moved(EVEN, 9, a), 10, b);
        const slower = notes.map((note) => ({ ...note, onset: note.onset * stretch, offset: note.offset * stretch }));
        const [one, other] = [triplet(notes)!, triplet(slower)!];
        expect(one.shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
        one.shares.forEach((share, k) => {
          expect(other.shares[k]!).toBeCloseTo(share, 6);
        });
      }),
      { numRuns: 30 },
    );
  });

  it('are not measured when one of their notes is missing', () => {
    expect(
      triplet(EVEN.map((note) => (note.index === 9 ? { ...note, status: 'left-out' as const } : note))),
    ).toBeUndefined();
  });
});

describe('entries after rests', () => {
  const part = smallPart(QUARTERS.map((note, i) => (i === 10 ? { ...note, rest: 1 } : note)));
  const EVEN = playEvenly(part, 0.75);
  const entries = (notes: readonly HandNote[], alignment = {}) => measured(part, notes, alignment).entries;

  it('in time are 0 late', () => {
    expect(entries(EVEN)).toHaveLength(1);
    expect(entries(EVEN)[0]).toMatchObject({ index: 10, bar: '3', restQuarters: 1 });
    expect(entries(EVEN)[0]!.lateSeconds).toBeCloseTo(0, 6);
    expect(entries(EVEN)[0]!.secondsAQuarter).toBeCloseTo(0.75, 6);
  });

  it.each([0.18, 0.06, -0.12])('%d s late and caught up again are as late as that', (seconds) => {
    expect(entries(moved(EVEN, 10, seconds))[0]!.lateSeconds).toBeCloseTo(seconds, 2);
  });

  it.each([0.18, 0.06, -0.12])('%d s late for good are late, by at least three quarters of it', (seconds) => {
    // the local pace is read across the delay as well and takes some of it for slower playing; never more than there is
    const share = entries(later(EVEN, 10, seconds))[0]!.lateSeconds / seconds;
    expect(share).toBeGreaterThan(0.75);
    expect(share).toBeLessThan(1.02);
  });

  it('are not late because one note before the rest was misplaced', () => {
    expect(Math.abs(entries(moved(EVEN, 8, 0.2))[0]!.lateSeconds)).toBeLessThan(0.02);
  });

  it('are not measured when not heard, after a restart, or without a pace', () => {
    expect(entries(EVEN.map((note) => (note.index === 10 ? { ...note, status: 'left-out' as const } : note)))).toEqual(
      [],
    );
    expect(entries(EVEN, { restarts: [{ stoppedAtIndex: 12, resumedAtIndex: 10, onsetSeconds: 9 }] })).toEqual([]);
    const alone = EVEN.map((note) =>
      note.index === 10 || note.index === 9 ? note : { ...note, status: 'left-out' as const },
    );
    expect(entries(alone)).toEqual([]);
  });
});
