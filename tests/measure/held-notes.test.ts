import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CANDIDATES } from '../../src/features/index.js';
import { type MeasureContext, measureTake } from '../../src/measure/index.js';
import type { Part } from '../../src/score/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { handContext, playEvenly } from '../helpers/hand-context.js';
import { hearTake, middle } from '../helpers/heard-take.js';

/** Eight notes of two seconds, a rest after the fourth. */
const LONG: readonly NoteSketch[] = [60, 64, 62, 67, 65, 69, 64, 60].map((midi, i) => ({
  midi,
  quarters: 2,
  rest: i === 4 ? 1 : 0,
}));
const PART = smallPart(LONG);

const even = (part: Part = PART): MeasureContext => handContext(part, playEvenly(part));
const measured = (context: MeasureContext) => measureTake(context).heldNotes;

/** Bends the pitch of one note frame by frame. */
function bend(context: MeasureContext, index: number, cents: (seconds: number, frame: number) => number): void {
  const { features, alignment } = context;
  const { onsetSeconds = 0, offsetSeconds = 0 } = alignment.notes[index]!;
  const first = Math.ceil(onsetSeconds / features.pitchHopSeconds);
  for (let f = first; f * features.pitchHopSeconds < offsetSeconds; f++) {
    const at = CANDIDATES * f;
    const bent = cents(f * features.pitchHopSeconds - onsetSeconds, f - first);
    features.candidateMidi[at] = features.candidateMidi[at]! + bent / 100;
  }
}

/** Moves the level of one note frame by frame. */
function swell(context: MeasureContext, index: number, decibels: (seconds: number) => number): void {
  const { features, alignment } = context;
  const { onsetSeconds = 0, offsetSeconds = 0 } = alignment.notes[index]!;
  for (let f = Math.round(onsetSeconds / features.levelHopSeconds); f * features.levelHopSeconds < offsetSeconds; f++) {
    const db = decibels(f * features.levelHopSeconds - onsetSeconds);
    features.power[f] = features.power[f]! * 10 ** (db / 10);
  }
}

describe('long notes held perfectly', () => {
  const notes = measured(even());

  it('do not stray, and end as they were', () => {
    expect(notes.map(({ index }) => index)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
    for (const note of notes) {
      expect(note.wobbleCents).toBeCloseTo(0, 3);
      expect(note.endCents).toBeCloseTo(0, 3);
      expect(note.endDb).toBeCloseTo(0, 3);
      expect(note.vibrato).toBeUndefined();
    }
  });

  it('know which of them a rest or the end follows', () => {
    expect(notes.flatMap(({ index, beforeBreath }) => (beforeBreath ? [index] : []))).toEqual([3, 7]);
  });

  it('are looked at without their beginning and end', () => {
    // nine tenths of two seconds, less 0.12 and 0.06 (the constants of the measure, by hand)
    expect(notes[0]!.seconds).toBeCloseTo(1.62, 6);
  });
});

describe('known movements of the pitch', () => {
  it('as regular as vibrato are told apart, with rate and depth', () => {
    const context = even();
    bend(context, 2, (t) => 20 * Math.sin(2 * Math.PI * 6 * t));
    const note = measured(context)[2]!;
    expect(note.vibrato?.rateHz).toBeCloseTo(6, 1);
    expect(note.vibrato?.depthCents).toBeGreaterThan(19);
    expect(note.vibrato?.depthCents).toBeLessThan(21);
    // the bend and the wave are taken out one after the other, which leaves less than a tenth
    expect(note.wobbleCents).toBeLessThan(2);
  });

  // Source: Rousseeuw & Croux 1993: 1.4826 times the median absolute deviation, which is 10 where two of three frames are off by 10.
  it('from one side to the other are told as their robust standard deviation', () => {
    const context = even();
    bend(context, 2, (_, frame) => 10 * ((frame % 3) - 1));
    const note = measured(context)[2]!;
    expect(note.vibrato).toBeUndefined();
    expect(note.wobbleCents).toBeGreaterThan(14.826 - 0.3);
    expect(note.wobbleCents).toBeLessThan(14.826 + 0.3);
  });

  it('slower than a shake are the note’s own course', () => {
    const context = even();
    bend(context, 2, (t) => 15 * t);
    expect(measured(context)[2]!.wobbleCents).toBeLessThan(0.5);
  });

  it('of more than eight turns a second, or less than four, are no vibrato', () => {
    for (const hz of [2.5, 11]) {
      const context = even();
      bend(context, 2, (t) => 20 * Math.sin(2 * Math.PI * hz * t));
      expect(measured(context)[2]!.vibrato).toBeUndefined();
    }
  });

  it('at the end are told as what they come to', () => {
    const context = even();
    bend(context, 3, (t) => (t > 1.5 ? -30 : 0));
    swell(context, 3, (t) => (t > 1.5 ? -6 : 0));
    expect(measured(context)[3]!.endCents).toBeCloseTo(-30, 3);
    expect(measured(context)[3]!.endDb).toBeCloseTo(-6, 3);
  });
});

describe('the level', () => {
  it('is not said to waver where nobody knows the room', () => {
    expect(measured(even())[0]!.wobbleDb).toEqual({ notMeasured: { code: 'decay-hidden', facts: {} } });
  });

  it('is left out in a room that rings', () => {
    const part = smallPart(LONG.map((note) => ({ ...note, rest: 1 })));
    const wet = hearTake(part, { roomSeconds: 1.8, signalToNoiseDb: 70 });
    const { recording, heldNotes } = measureTake(wet);
    expect(recording.reverberationSeconds).toBeGreaterThan(0.9);
    expect(heldNotes[0]!.wobbleDb).toEqual({ notMeasured: { code: 'room-rings', facts: {} } });
  });
});

describe('too little', () => {
  it('of a note gives no entry', () => {
    const part = smallPart(LONG.map((note, i) => ({ ...note, quarters: i === 1 ? 0.5 : 2 })));
    expect(measured(even(part)).map(({ index }) => index)).not.toContain(1);
  });

  it('gives no entry where the pitch is lost before the end', () => {
    const context = even();
    const { features, alignment } = context;
    const to = alignment.notes[2]!.offsetSeconds!;
    // the last 0.3 of 1.8 seconds: more than the end that is compared, less than what may go unheard
    const from = Math.round((to - 0.3) / features.pitchHopSeconds);
    for (let f = from; f * features.pitchHopSeconds < to; f++) features.candidateClarity[CANDIDATES * f] = 0.2;
    expect(measured(context).map(({ index }) => index)).toEqual([0, 1, 3, 4, 5, 6, 7]);
  });

  it('gives no entry where a trill is written, or the note was not played', () => {
    const part = smallPart(LONG.map((note, i) => ({ ...note, ornament: i === 1 ? 'trill-mark' : null })));
    const context = handContext(
      part,
      playEvenly(part).map((note) => (note.index === 2 ? { ...note, status: 'left-out' as const } : note)),
    );
    expect(measured(context).map(({ index }) => index)).toEqual([0, 3, 4, 5, 6, 7]);
  });

  it('of a player says nothing of a habit', () => {
    const few = smallPart(LONG.slice(0, 4));
    expect(measureTake(even(few)).steadiness).toEqual({ notMeasured: { code: 'too-few-held-notes', facts: {} } });
  });
});

describe('a player’s usual steadiness', () => {
  it('is the median of the notes without vibrato', () => {
    const context = even();
    // robust standard deviations of 0, 1.4826 … 8.8956 by hand, as above, and one note of vibrato
    for (let i = 0; i < 7; i++) bend(context, i, (_, frame) => i * ((frame % 3) - 1));
    bend(context, 7, (t) => 20 * Math.sin(2 * Math.PI * 5 * t));
    const { steadiness } = measureTake(context);
    if ('notMeasured' in steadiness) throw new Error('not measured');
    expect(steadiness.count).toBe(7);
    expect(steadiness.vibratoCount).toBe(1);
    expect(steadiness.wobbleCents).toBeGreaterThan(3 * 1.4826 - 0.15);
    expect(steadiness.wobbleCents).toBeLessThan(3 * 1.4826 + 0.15);
    const [low, high] = steadiness.intervalCents;
    expect(low).toBeLessThan(steadiness.wobbleCents);
    expect(high).toBeGreaterThan(steadiness.wobbleCents);
  });
});

describe('on takes of the synthesiser', () => {
  const faults = [
    { kind: 'shake', at: 1, cents: 25, db: 0.8 },
    { kind: 'shake', at: 5, cents: 25, db: 0.8 },
    { kind: 'sag', at: 3, cents: 40, db: 8, seconds: 0.7 },
  ] as const;

  it.each(['clarinet', 'flute', 'brass'] as const)('a %s that shakes on two notes shakes on those', (voice) => {
    const notes = measureTake(hearTake(PART, { voice, faults })).heldNotes;
    const shaken = notes.filter(({ index }) => index === 1 || index === 5);
    const others = notes.filter(({ index }) => index !== 1 && index !== 5);
    expect(Math.min(...shaken.map((n) => n.wobbleCents))).toBeGreaterThan(12);
    expect(Math.max(...others.map((n) => n.wobbleCents))).toBeLessThan(3);
  });

  it.each(['clarinet', 'flute', 'brass'] as const)('a %s whose air gives way falls at the end', (voice) => {
    const notes = measureTake(hearTake(PART, { voice, faults })).heldNotes;
    const sagged = notes.find(({ index }) => index === 3)!;
    expect(sagged.endCents).toBeLessThan(-20);
    expect(sagged.endDb).toBeLessThan(-3);
    expect(Math.min(...notes.filter((n) => n.index !== 3).map((n) => n.endCents))).toBeGreaterThan(-8);
  });

  it('vibrato comes out at its rate and depth', () => {
    const notes = measureTake(hearTake(PART, { vibrato: { rateHz: 5.5, depthCents: 18 } })).heldNotes;
    const told = notes.flatMap(({ vibrato }) => vibrato ?? []);
    expect(told.length).toBe(8);
    expect(Math.abs(middle(told.map((v) => v.rateHz)) - 5.5)).toBeLessThan(0.2);
    expect(Math.abs(middle(told.map((v) => v.depthCents)) - 18)).toBeLessThan(3);
  });
});

describe('laws', () => {
  it('steadiness does not ask how loud or how high', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -5, max: 5 }),
        fc.double({ min: -30, max: 30, noNaN: true }),
        fc.array(fc.double({ min: -20, max: 20, noNaN: true }), { minLength: 5, maxLength: 5 }),
        (semitones, gainDb, waves) => {
          const wobble = (transposed: number, gain: number): number[] => {
            const part = smallPart(LONG.map((n) => ({ ...n, midi: n.midi + transposed })));
            const notes = playEvenly(part).map((n) => ({ ...n, levelDb: n.levelDb + gain }));
            const context = handContext(part, notes, { floorDb: -120 });
            bend(context, 1, (t) => waves.reduce((s, w, k) => s + w * Math.sin(2 * Math.PI * (k + 1.7) * t), 0) / 3);
            return measured(context).flatMap((n) => [n.wobbleCents, n.endCents, n.endDb]);
          };
          const [plain, moved] = [wobble(0, 0), wobble(semitones, gainDb)];
          expect(moved.length).toBe(plain.length);
          moved.forEach((value, i) => {
            expect(Math.abs(value - plain[i]!)).toBeLessThan(0.05);
          });
        },
      ),
      { numRuns: 25 },
    );
  });
});
