import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type NotMeasured, notMeasured } from '../../src/base/index.js';
import { type IntonationMeasure, type LoudPitchMeasure, measureTake } from '../../src/measure/index.js';
import type { PartNote } from '../../src/score/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { type HandNote, type HandOptions, handContext, playEvenly } from '../helpers/hand-context.js';
import { demoPart, hearTake } from '../helpers/heard-take.js';

type Change = (note: HandNote) => Partial<HandNote>;

/** A written note; the octave is of no use here. */
const named = (step: PartNote['written']['step'], alter: number, midi: number): NoteSketch => ({
  midi,
  quarters: 1,
  written: { step, alter, octave: 4 },
});

/** C, D, F♯ and B♭ in turn, four times; the player's own tuning is in the middle of what they play. */
const FOUR = [named('C', 0, 60), named('D', 0, 62), named('F', 1, 66), named('B', -1, 70)];
const PART = smallPart([...FOUR, ...FOUR, ...FOUR, ...FOUR]);

function intonation(change: Change, options: HandOptions = {}, part = PART): IntonationMeasure {
  const notes = playEvenly(part).map((note) => ({ ...note, ...change(note) }));
  return measureTake(handContext(part, notes, options)).intonation;
}

// pitches are 32 bit floats: near 64 exact to 0.0004 cents
const DIGITS = 2;

describe('pitch by note name', () => {
  it('is 0 for all when the take is in tune with itself, wherever it is tuned', () => {
    const { noteNames } = intonation(() => ({ cents: 17 }));
    expect(noteNames.map((n) => n.name)).toEqual(['C', 'D', 'F♯', 'B♭']);
    for (const { cents, count, intervalCents } of noteNames) {
      expect(count).toBe(4);
      for (const value of [cents, ...intervalCents]) expect(value).toBeCloseTo(0, DIGITS);
    }
  });

  it('finds the note that leans', () => {
    const { noteNames } = intonation(({ playedMidi }) => ({ cents: playedMidi === 66 ? 31 : 10 }));
    expect(noteNames.map((n) => Math.round(n.cents))).toEqual([0, 0, 21, 0]);
  });

  it('knows how sure it is', () => {
    // Kenney & Keeping 1962: the error of a median is 1.2533 σ / √n. C at −3, −1, 1 and 3 cents: their distances from
    // the median 0 are 1, 1, 3, 3 with median 2; σ = 1.4826 × 2; half of the 95 % interval 1.96 × 1.2533 × 2.9652 / 2
    const { noteNames } = intonation(({ index, playedMidi }) => ({ cents: playedMidi === 60 ? -3 + index / 2 : 0 }));
    expect(noteNames[0]!.cents).toBeCloseTo(0, DIGITS);
    expect(noteNames[0]!.intervalCents[0]).toBeCloseTo(-3.642, DIGITS);
    expect(noteNames[0]!.intervalCents[1]).toBeCloseTo(3.642, DIGITS);
  });

  it('keeps F♯ and G♭ apart, puts octaves together, and calls double signs by name', () => {
    const five = [named('G', -1, 66), named('F', 1, 78), named('F', 1, 66), named('E', -2, 62), named('F', 2, 67)];
    const part = smallPart([...five, ...five, ...five, ...five]);
    const { noteNames } = intonation(() => ({}), {}, part);
    expect(noteNames.map((n) => [n.name, n.count])).toEqual([
      ['E𝄫', 4],
      ['G♭', 4],
      ['F♯', 8],
      ['F𝄪', 4],
    ]);
  });

  it('needs four notes of a name that were played as written and lasted', () => {
    const one = (change: Change) =>
      intonation((note) => (note.index === 4 ? change(note) : {})).noteNames.map((n) => n.name);
    const withoutC = ['D', 'F♯', 'B♭'];
    expect(one(() => ({}))).toEqual(['C', ...withoutC]);
    expect(one(() => ({ status: 'left-out' }))).toEqual(withoutC);
    expect(one(() => ({ status: 'other-pitch', playedMidi: 61 }))).toEqual(withoutC);
    expect(one(({ onset }) => ({ offset: onset + 0.11 }))).toEqual(withoutC);
    expect(one(({ onset }) => ({ offset: onset + 0.13 }))).toEqual(['C', ...withoutC]);
    const graced = smallPart([...FOUR.map((n) => ({ ...n, grace: true })), ...FOUR, ...FOUR, ...FOUR]);
    expect(intonation(() => ({}), {}, graced).noteNames).toEqual([]);
  });

  it('has nothing to say of a take that was not heard', () => {
    expect(intonation(() => ({ status: 'left-out' }))).toEqual({
      noteNames: [],
      registers: [],
      withLoudness: notMeasured('too-few-loud-and-soft'),
    });
  });
});

describe('pitch by register', () => {
  const scale = smallPart(Array.from({ length: 24 }, (_, i) => ({ midi: 60 + (i % 12), quarters: 1 })));

  it('cuts the range of the part in three and finds the one that leans', () => {
    const { registers } = intonation(({ playedMidi }) => ({ cents: playedMidi >= 68 ? 12 : 0 }), {}, scale);
    // twelve semitones from 60 on: four each
    expect(registers.map(({ register, fromMidi, toMidi, count }) => [register, fromMidi, toMidi, count])).toEqual([
      ['low', 60, 63, 8],
      ['middle', 64, 67, 8],
      ['high', 68, 71, 8],
    ]);
    expect(registers.map((r) => Math.round(r.cents))).toEqual([0, 0, 12]);
  });

  it('has no entry for a third with fewer than four notes', () => {
    const part = smallPart([60, 61, 60, 61, 79, 79, 79, 60].map((midi) => ({ midi, quarters: 1 })));
    expect(intonation(() => ({}), {}, part).registers.map((r) => r.register)).toEqual(['low']);
  });

  it('covers every semitone of the range once', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 40 }), (reach) => {
        const part = smallPart(Array.from({ length: 4 * reach }, (_, i) => ({ midi: 48 + (i % reach), quarters: 1 })));
        const { registers } = intonation(() => ({}), {}, part);
        const covered = registers.flatMap((r) =>
          Array.from({ length: r.toMidi - r.fromMidi + 1 }, (_, i) => r.fromMidi + i),
        );
        expect(covered).toEqual(Array.from({ length: reach }, (_, i) => 48 + i));
        expect(registers.reduce((sum, r) => sum + r.count, 0)).toBe(4 * reach);
      }),
      { numRuns: 15 },
    );
  });
});

describe('pitch with loudness', () => {
  /** Six pitches, five times each, from soft to loud. */
  const part = smallPart(Array.from({ length: 30 }, (_, i) => ({ midi: 60 + 2 * (i % 6), quarters: 1 })));
  const times = (index: number) => Math.floor(index / 6) - 2;
  type Line = Exclude<LoudPitchMeasure, NotMeasured>;
  const line = (change: Change): Line => {
    const { withLoudness } = intonation(change, {}, part);
    expect(withLoudness).not.toHaveProperty('notMeasured');
    return withLoudness as Line;
  };

  it.each([0, 1.5, -2])('goes by %d cents a decibel', (centsPerDb) => {
    const found = line(({ index }) => ({ levelDb: -30 + 3 * times(index), cents: 3 * centsPerDb * times(index) }));
    expect(found.centsPerDb).toBeCloseTo(centsPerDb, 3);
    expect(found.errorCentsPerDb).toBeCloseTo(0, 3);
    // five levels 3 dB apart
    expect(found.reachDb).toBeCloseTo(12, 3);
    expect(found.count).toBe(30);
  });

  it('does not take a register that is sharp and loud by itself for loudness', () => {
    const found = line(({ index, playedMidi }) => ({
      levelDb: -36 + 2 * times(index) + (playedMidi - 60),
      cents: 2 * (playedMidi - 60),
    }));
    expect(found.centsPerDb).toBeCloseTo(0, 3);
    expect(found.reachDb).toBeCloseTo(8, 3);
  });

  it('is not moved by one note far off, and less sure the more the notes scatter', () => {
    const scattered = (db: number): Change => {
      return ({ index }) => ({ levelDb: -30 + 3 * times(index), cents: 3 * times(index) + db * ((index % 3) - 1) });
    };
    const odd = line((note) => (note.index === 29 ? { levelDb: -24, cents: -45 } : scattered(1)(note)));
    expect(Math.abs(odd.centsPerDb - 1)).toBeLessThan(0.15);
    expect(line(scattered(6)).errorCentsPerDb).toBeGreaterThan(line(scattered(1)).errorCentsPerDb);
  });

  it('is not told when loud and soft are alike, or few notes come back', () => {
    expect(intonation(({ index }) => ({ levelDb: -30 + 1.4 * times(index) }), {}, part).withLoudness).toEqual(
      notMeasured('loud-and-soft-alike'),
    );
    const few = notMeasured('too-few-loud-and-soft');
    const loudAndSoft: Change = ({ index }) => ({ levelDb: -30 + 3 * times(index) });
    expect(
      intonation((n) => ({ ...loudAndSoft(n), ...(n.index < 7 ? { status: 'left-out' } : {}) }), {}, part).withLoudness,
    ).toEqual(few);
    const once = smallPart(Array.from({ length: 30 }, (_, i) => ({ midi: 50 + i, quarters: 1 })));
    expect(intonation(loudAndSoft, {}, once).withLoudness).toEqual(few);
  });
});

describe('laws of intonation', () => {
  it('gain, a stretch, another key and another tuning change nothing', () => {
    const scatter = fc.array(fc.integer({ min: -25, max: 25 }), { minLength: 16, maxLength: 16 });
    const by = fc.integer({ min: -12, max: 12 });
    fc.assert(
      fc.property(scatter, by, fc.double({ min: 0.6, max: 2, noNaN: true }), (cents, shift, slower) => {
        const before = intonation(({ index }) => ({ cents: cents[index]! }));
        const after = intonation(
          ({ index, onset, offset }) => ({
            cents: cents[index]! + shift,
            levelDb: -24 + shift,
            onset: onset * slower,
            offset: offset * slower,
          }),
          { offsetSemitones: shift },
        );
        for (const kind of ['noteNames', 'registers'] as const) {
          expect(after[kind].length).toBe(before[kind].length);
          after[kind].forEach((t, k) => {
            const was = before[kind][k]!;
            expect(t.count).toBe(was.count);
            expect(t.cents).toBeCloseTo(was.cents, DIGITS);
            expect(t.intervalCents[1]).toBeCloseTo(was.intervalCents[1], DIGITS);
            expect(t.intervalCents[0]).toBeLessThanOrEqual(t.cents);
          });
        }
      }),
      { numRuns: 25 },
    );
  });
});

describe('the intonation of a performed take', () => {
  // Source: the pitch the synthesiser was told to play sharp.
  it('finds the note that is always sharp', () => {
    const part = demoPart();
    const counts = new Map<number, number>();
    for (const n of part.notes) counts.set(n.writtenMidi, (counts.get(n.writtenMidi) ?? 0) + 1);
    const [writtenMidi] = [...counts].sort((a, b) => b[1] - a[1])[0]!;
    const { step, alter } = part.notes.find((n) => n.writtenMidi === writtenMidi)!.written;
    const name = `${step}${['♭', '', '♯'][alter + 1]}`;
    const plan = { roomSeconds: 0, tuningScatterCents: 1 };
    const of = (cents: number): number => {
      const faults = [{ kind: 'pitch-tendency', writtenMidi, cents } as const];
      const { noteNames } = measureTake(hearTake(part, { ...plan, faults })).intonation;
      return noteNames.find((n) => n.name === name)!.cents;
    };
    const [good, sharp] = [of(0), of(24)];
    expect(Math.abs(good)).toBeLessThan(3);
    expect(Math.abs(sharp - 24)).toBeLessThan(5);
  });
});
