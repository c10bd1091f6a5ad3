import { describe, expect, it } from 'vitest';
import { notMeasured } from '../../src/base/index.js';
import { measureTake } from '../../src/measure/index.js';
import { smallPart } from '../demo/small-part.js';
import { type HandNote, handContext, playEvenly } from '../helpers/hand-context.js';

const PART = smallPart([60, 64, 67, 65, 62, 69, 71, 72].map((midi) => ({ midi, quarters: 1 })));
const EVEN = playEvenly(PART);

const changed = (index: number, change: Partial<HandNote>): HandNote[] =>
  EVEN.map((note) => (note.index === index ? { ...note, ...change } : note));
const measured = (notes: readonly HandNote[], options?: Parameters<typeof handContext>[2]) =>
  measureTake(handContext(PART, notes, options));

describe('the pitch of a note', () => {
  it('played in tune is at 0 cents', () => {
    for (const note of measured(EVEN).notes) expect([note.cents, note.centsFromOwnTuning]).toEqual([0, 0]);
  });

  it('is off by what it is off, from A = 440 Hz and from the player’s own tuning', () => {
    const notes = EVEN.map((note) => ({ ...note, cents: note.index === 3 ? 42 : 12 }));
    const result = measured(notes).notes;
    // candidates are 32 bit floats: a 64 with 24 bits is exact to 0.0004 cents
    expect(result[3]!.cents).toBeCloseTo(42, 2);
    expect(result[3]!.centsFromOwnTuning).toBeCloseTo(30, 2);
    expect(result[4]!.cents).toBeCloseTo(12, 2);
    expect(result[4]!.centsFromOwnTuning).toBeCloseTo(0, 2);
  });

  it('of a wrong note is measured from the note that was played', () => {
    const notes = changed(2, { playedMidi: 68, status: 'other-pitch', cents: -15 });
    expect(measured(notes).notes[2]!.cents).toBeCloseTo(-15, 2);
  });

  it('of a transposed take is measured where it sounds', () => {
    const notes = EVEN.map((note) => ({ ...note, cents: 7 }));
    for (const note of measured(notes, { offsetSemitones: -2 }).notes) expect(note.cents).toBeCloseTo(7, 2);
  });

  it('is not measured when the note was not heard or is too short', () => {
    const { notes } = measured(changed(2, { status: 'left-out' }));
    expect(notes[2]!.cents).toEqual(notMeasured('note-not-heard'));
    expect(notes[2]!.centsFromOwnTuning).toEqual(notMeasured('note-not-heard'));
    const short = measured(changed(2, { offset: EVEN[2]!.onset + 0.03 })).notes[2]!;
    expect(short.cents).toHaveProperty('notMeasured');
  });

  it('is not measured from another pitch that sounds in its place', () => {
    const context = handContext(PART, EVEN);
    const lies = { ...context.alignment.notes[2]!, playedMidi: 60 };
    const notes = context.alignment.notes.map((note) => (note.index === 2 ? lies : note));
    const result = measureTake({ ...context, alignment: { ...context.alignment, notes } });
    expect(result.notes[2]!.cents).toHaveProperty('notMeasured');
  });
});

describe('the level of a note', () => {
  it('is its RMS level', () => {
    const notes = EVEN.map((note) => ({ ...note, levelDb: -20 - note.index }));
    for (const note of measured(notes).notes) expect(note.levelDb).toBeCloseTo(-20 - note.index, 3);
  });

  it('is that of its held part: a loud attack and a click in it do not count', () => {
    const context = handContext(PART, EVEN);
    const power = context.features.power.slice();
    const frame = (seconds: number): number => Math.round(seconds / context.features.levelHopSeconds);
    power.fill(1, frame(EVEN[3]!.onset), frame(EVEN[3]!.onset + 0.1));
    power.fill(1, frame(EVEN[3]!.onset + 0.5), frame(EVEN[3]!.onset + 0.51));
    const result = measureTake({ ...context, features: { ...context.features, power } });
    expect(result.notes[3]!.levelDb).toBeCloseTo(-24, 3);
  });

  it('is not measured when the note was not heard, is lost in noise or hardly lasts', () => {
    expect(measured(changed(1, { status: 'left-out' })).notes[1]!.levelDb).toHaveProperty('notMeasured');
    expect(measured(changed(1, { levelDb: -78 })).notes[1]!.levelDb).toHaveProperty('notMeasured');
    expect(measured(changed(1, { offset: EVEN[1]!.onset + 0.008 })).notes[1]!.levelDb).toHaveProperty('notMeasured');
    expect(measured(changed(1, { levelDb: -70 })).notes[1]!.levelDb).toBeCloseTo(-70, 1);
  });
});

describe('the tuning of a take', () => {
  // Source: ISO 16 for 440 Hz; the others by the definition of the cent: 1200 log2(442 / 440) = 7.85 and so on.
  it.each([
    [0, 440],
    [7.85, 442],
    [-19.79, 435],
    [19.56, 445],
  ])('at %d cents is A = %d Hz', (cents, hz) => {
    const { tuning } = measured(EVEN.map((note) => ({ ...note, cents })));
    expect(tuning).toHaveProperty('centsFromA440', expect.closeTo(cents, 2));
    expect(tuning).toHaveProperty('a4Hz', expect.closeTo(hz, 1));
  });

  it('is that of most notes: two that are far off do not move it', () => {
    const notes = EVEN.map((note) => ({ ...note, cents: note.index < 2 ? 60 : 5 }));
    expect(measured(notes).tuning).toHaveProperty('centsFromA440', expect.closeTo(5, 2));
  });

  it('is not measured from fewer than five notes', () => {
    const notes = EVEN.map((note) => (note.index < 4 ? note : { ...note, status: 'left-out' as const }));
    expect(measured(notes).tuning).toHaveProperty('notMeasured');
  });
});
