import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Fault, type PlayedNote, performPart, type TakePlan } from '../../src/demo/index.js';
import { type NoteSketch, smallPart } from './small-part.js';

const EXACT: TakePlan = {
  seed: 1,
  voice: 'clarinet',
  timingScatterSeconds: 0,
  tuningScatterCents: 0,
  levelScatterDb: 0,
  leadInSeconds: 0,
};

/** Eight quarters, one a second, on a scale. */
const scale = (change: Record<number, Partial<NoteSketch>> = {}) =>
  smallPart([60, 62, 64, 65, 67, 69, 71, 72].map((midi, i) => ({ midi, quarters: 1, ...change[i] })));

const play = (part: ReturnType<typeof smallPart>, ...faults: Fault[]): PlayedNote[] =>
  performPart(part, { ...EXACT, faults });

const onsets = (notes: readonly PlayedNote[]): number[] =>
  notes.map((note) => Math.round(note.onsetSeconds * 1000) / 1000);
const share = (notes: readonly PlayedNote[], at: number): number =>
  (notes[at]!.offsetSeconds - notes[at]!.onsetSeconds) / (notes[at + 1]!.onsetSeconds - notes[at]!.onsetSeconds);

describe('a part played as written', () => {
  it('has every note in its time and at its pitch', () => {
    const notes = play(scale());
    expect(onsets(notes)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
    expect(notes.map((note) => note.playedMidi)).toEqual([60, 62, 64, 65, 67, 69, 71, 72]);
    expect(notes.every((note, i) => note.index === i && note.afterIndex === i - 1 && !note.abandoned)).toBe(true);
    expect(notes.every((note) => note.cents === 0 && note.tongued)).toBe(true);
  });

  it('goes faster by its tempo factor and drifts', () => {
    expect(onsets(performPart(scale(), { ...EXACT, tempoFactor: 2 }))).toEqual([0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5]);
    const drifted = onsets(performPart(scale(), { ...EXACT, tempoDrift: 1.5 }));
    const first = drifted[1]! - drifted[0]!;
    const last = drifted[7]! - drifted[6]!;
    // tempo grows by the same ratio each quarter, eight quarters for the whole drift, seven from first to last
    expect(first / last).toBeCloseTo(1.5 ** (6 / 8), 2);
  });

  // Source: Bresin & Battel 2000: staccato sounds about 40 % of the interval.
  it('sounds staccato for about two fifths of its time', () => {
    expect(Math.abs(share(play(scale({ 2: { articulations: ['staccato'] } })), 2) - 0.4)).toBeLessThan(0.05);
  });

  it('holds a fermata longer than written and lets the rest follow', () => {
    const notes = play(scale({ 3: { fermata: true } }), { kind: 'fermata', at: 3, ratio: 2.5 });
    expect(onsets(notes)).toEqual([0, 1, 2, 3, 5.5, 6.5, 7.5, 8.5]);
    expect(share(notes, 3)).toBeGreaterThan(0.9);
    const unasked = play(scale({ 3: { fermata: true } }));
    // Source: a fermata is held up to about twice its value (common practice, from memory; short notes less)
    expect(unasked[4]!.onsetSeconds - unasked[3]!.onsetSeconds).toBeGreaterThan(1.2);
    expect(unasked[4]!.onsetSeconds - unasked[3]!.onsetSeconds).toBeLessThan(2.1);
  });

  it('leaves a gap at a breath mark without delay', () => {
    const notes = play(scale({ 3: { breathAfter: 'breath' } }));
    expect(onsets(notes)[4]).toBe(4);
    // Source: a quick breath takes 0.2 to 0.5 s (from memory)
    expect(notes[4]!.onsetSeconds - notes[3]!.offsetSeconds).toBeGreaterThan(0.2);
    expect(notes[4]!.onsetSeconds - notes[3]!.offsetSeconds).toBeLessThan(0.5);
  });

  it('plays grace notes before the beat of their main note', () => {
    const notes = play(
      smallPart([
        { midi: 60, quarters: 1 },
        { midi: 64, quarters: 0, grace: true },
        { midi: 65, quarters: 1 },
      ]),
    );
    expect(notes[2]!.onsetSeconds).toBe(1);
    expect(notes[1]!.onsetSeconds).toBeGreaterThan(0.85);
    expect(notes[1]!.onsetSeconds).toBeLessThan(0.98);
    expect(notes[0]!.offsetSeconds).toBeLessThan(notes[1]!.onsetSeconds);
  });
});

describe('each fault does what it says and nothing else', () => {
  const clean = play(scale());
  /** Asserts that notes other than these are as in the clean performance. */
  const unchangedBut = (notes: readonly PlayedNote[], ...changed: number[]): void => {
    const others = notes.filter(({ index }) => index !== null && !changed.includes(index));
    expect(others.length).toBeGreaterThan(0);
    for (const note of others) expect(note).toEqual(clean[note.index!]);
  };

  it('misread', () => {
    const misreadings = [{ kind: 'accidental-forgotten', writtenMidi: 66, soundingMidi: 63 } as const];
    const part = scale({ 2: { misreadings } });
    const notes = play(part, { kind: 'misread', at: 2, misreading: 'accidental-forgotten' });
    expect(notes[2]!.playedMidi).toBe(63);
    unchangedBut(notes, 2);
    expect(() => play(part, { kind: 'misread', at: 2, misreading: 'dropped-within-bar' })).toThrow('note 2');
  });

  it('wrong note, found by bar and beat', () => {
    const notes = play(scale(), { kind: 'wrong-note', at: { bar: '2', beat: 3 }, semitones: -2 });
    expect(notes[6]!.playedMidi).toBe(69);
    unchangedBut(notes, 6);
    expect(() => play(scale(), { kind: 'wrong-note', at: { bar: '9', beat: 1 }, semitones: 1 })).toThrow('no note');
  });

  it('missed note', () => {
    const notes = play(scale(), { kind: 'missed-note', at: 4 });
    expect(notes.map((note) => note.index)).toEqual([0, 1, 2, 3, 5, 6, 7]);
    unchangedBut(notes);
  });

  it('a missed note under a slur is silent, and the next one is tongued', () => {
    const slur = { slurredFromPrevious: true, slurredToNext: true };
    const notes = play(scale({ 3: { slurredToNext: true }, 4: slur, 5: { slurredFromPrevious: true } }), {
      kind: 'missed-note',
      at: 4,
    });
    expect(notes[3]!.legato).toBe(false);
    expect(notes[3]!.offsetSeconds).toBeLessThan(4);
    expect(notes[4]).toMatchObject({ index: 5, tongued: true });
  });

  it('added note', () => {
    const notes = play(scale(), { kind: 'added-note', after: 4, semitones: 3 });
    expect(notes).toHaveLength(9);
    expect(notes[5]).toMatchObject({ index: null, afterIndex: 4, playedMidi: 70 });
    expect(notes[5]!.onsetSeconds).toBeGreaterThanOrEqual(notes[4]!.offsetSeconds);
    expect(notes[5]!.offsetSeconds).toBeLessThanOrEqual(notes[6]!.onsetSeconds);
    unchangedBut(notes, 4);
  });

  it('uneven group', () => {
    const notes = play(scale(), { kind: 'uneven-group', at: 2, shares: [0.5, 0.3, 0.2] });
    expect(onsets(notes)).toEqual([0, 1, 2, 3.5, 4.4, 5, 6, 7]);
  });

  it('late entry, caught up by the next quarter', () => {
    const notes = play(scale({ 4: { rest: 1 } }), { kind: 'late-entry', at: 4, seconds: 0.2 });
    expect(onsets(notes)).toEqual([0, 1, 2, 3, 5.2, 6, 7, 8]);
  });

  it('hesitation', () => {
    expect(onsets(play(scale(), { kind: 'hesitation', before: 3, seconds: 0.7 }))).toEqual([
      0, 1, 2, 3.7, 4.7, 5.7, 6.7, 7.7,
    ]);
  });

  it('breath where none is marked', () => {
    const notes = play(scale(), { kind: 'breath', after: 2, seconds: 0.4, delaySeconds: 0.1 });
    expect(onsets(notes)).toEqual([0, 1, 2, 3.1, 4.1, 5.1, 6.1, 7.1]);
    expect(notes[3]!.onsetSeconds - notes[2]!.offsetSeconds).toBeCloseTo(0.4, 9);
  });

  it('long staccato, at one note or everywhere', () => {
    const part = scale({ 1: { articulations: ['staccato'] }, 3: { articulations: ['staccato'] } });
    const one = play(part, { kind: 'staccato', at: 1, share: 0.85 });
    expect(share(one, 1)).toBeCloseTo(0.85, 9);
    expect(share(one, 3)).toBeLessThan(0.5);
    expect(share(play(part, { kind: 'staccato', share: 0.85 }), 3)).toBeCloseTo(0.85, 9);
  });

  it('restart', () => {
    const notes = play(scale(), { kind: 'restart', after: 4, resumeAt: 2, pauseSeconds: 1.5 });
    expect(notes.map((note) => note.index)).toEqual([0, 1, 2, 3, 4, 2, 3, 4, 5, 6, 7]);
    expect(onsets(notes)).toEqual([0, 1, 2, 3, 4, 6.5, 7.5, 8.5, 9.5, 10.5, 11.5]);
    expect(notes.map((note) => note.abandoned).indexOf(true)).toBe(2);
    expect(notes.filter((note) => note.abandoned).map((note) => note.index)).toEqual([2, 3, 4]);
  });

  it('skip', () => {
    const notes = play(scale(), { kind: 'skip', from: 2, to: 4 });
    expect(notes.map((note) => note.index)).toEqual([0, 1, 5, 6, 7]);
    expect(onsets(notes)).toEqual([0, 1, 2, 3, 4]);
  });
});

describe('laws', () => {
  it('onsets rise, every note ends after it began and not after the next begins', () => {
    const sketch = fc.record({
      midi: fc.integer({ min: 50, max: 90 }),
      quarters: fc.constantFrom(0.25, 0.5, 1, 2),
      rest: fc.constantFrom(0, 0, 0.5),
      slurredFromPrevious: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(sketch, { minLength: 1, maxLength: 30 }), fc.integer(), (sketches, seed) => {
        const notes = performPart(smallPart(sketches), { seed, voice: 'brass', tempoFactor: 1.4 });
        notes.forEach((note, i) => {
          expect(note.offsetSeconds).toBeGreaterThan(note.onsetSeconds);
          const next = notes[i + 1];
          if (next) expect(note.offsetSeconds).toBeLessThanOrEqual(next.onsetSeconds);
        });
      }),
      { numRuns: 100 },
    );
  });

  it('scatter has the spread the plan says', () => {
    const part = smallPart(Array.from({ length: 400 }, () => ({ midi: 60, quarters: 1 })));
    const notes = performPart(part, { ...EXACT, leadInSeconds: 1, timingScatterSeconds: 0.01, tuningScatterCents: 6 });
    const spread = (values: number[]): number => Math.sqrt(values.reduce((sum, x) => sum + x * x, 0) / values.length);
    // the standard error of a spread from 400 values is 3.5 %
    expect(spread(notes.map((note, i) => note.onsetSeconds - 1 - i)) / 0.01).toBeCloseTo(1, 0.5);
    expect(Math.abs(spread(notes.map((note) => note.cents)) - 6)).toBeLessThan(0.9);
  });
});
