import { describe, expect, it } from 'vitest';
import { decodePiece } from '../../src/align/fine/decode-piece.js';
import { fillGaps } from '../../src/align/fine/fill-gaps.js';
import type { DecodedSegment, DecodeInput } from '../../src/align/fine/types.js';
import type { SegmentEvidence } from '../../src/align/grid/segment-evidence.js';
import { createSegmentEvidence } from '../../src/align/grid/segment-evidence.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { type FramePitch, framesOf, handGrid } from '../helpers/hand-grid.js';

/**
 * The search of a piece decides by the least sum of prices: here each sum is worked out on paper for two readings of one sound,
 * and the strength at which one becomes cheaper than the other is tried on both sides. A quarter lasts a second, a frame a
 * hundredth. Source: definition; the prices are ours and typed here by hand.
 */
type Moment = readonly [frame: number, attack?: number, change?: number];

const HOP = 0.01;
/** Everything sounds everywhere: only times and onsets have a price. */
const EVERYTHING = sharesOf(() => 1, 1);
/** A quarter that lasts 0.2 s too long costs that in a width of 0.03 + 0.3. */
const LATE = 0.2 / 0.33;

function sharesOf(share: SegmentEvidence['share'], strongest: number): SegmentEvidence {
  const seconds = (from: number, to: number) => HOP * (to - from);
  return { voicedSeconds: seconds, heldSeconds: seconds, share, strongest: () => ({ midi: 40, share: strongest }) };
}

const heardIn = (frames: readonly FramePitch[]) => createSegmentEvidence({ ...handGrid(frames), hopSeconds: HOP });

function inputOf(
  sketches: readonly NoteSketch[],
  evidence: SegmentEvidence,
  moments: readonly Moment[],
  endFrame: number,
  change: Partial<DecodeInput> = {},
): DecodeInput {
  const { notes } = smallPart(sketches);
  return {
    ...{ notes, graceAfter: notes.map(() => false), roughOnsets: notes.map((n) => n.onsetQuarters) },
    ...{ startSeconds: 0, endSeconds: HOP * endFrame, pace: new Float64Array(notes.length).fill(1) },
    boundaries: {
      frame: Int32Array.from(moments, ([frame]) => frame),
      attack: Float32Array.from(moments, ([, attack = 1]) => attack),
      pitchChange: Float32Array.from(moments, ([, attack = 1, changed = attack]) => changed),
    },
    ...{ evidence, hopSeconds: HOP, offsetSemitones: 0, ...change },
  };
}

const quarters = (...midi: readonly number[]): NoteSketch[] => midi.map((m) => ({ midi: m, quarters: 1 }));
const told = (segments: readonly DecodedSegment[]) =>
  segments.map(({ index, fromFrame, toFrame, lookedAtAgain }) => {
    return `${index ?? 'x'}:${fromFrame}–${toFrame}${lookedAtAgain === true ? ' again' : ''}`;
  });

describe('where the second of two notes begins', () => {
  /** Where it is written, by an onset of so much attack and change, or a fifth of a second later by a plain one. */
  function second(notes: readonly NoteSketch[], attack: number, change: number): number {
    return decodePiece(inputOf(notes, EVERYTHING, [[0], [100, attack, change], [120]], 200))[1]!.fromFrame;
  }
  const slurred = (first: number, next: number): NoteSketch[] => [
    { midi: first, quarters: 1, slurredToNext: true },
    { midi: next, quarters: 1, slurredFromPrevious: true },
  ];

  it('is weighed by the attack: 1.6 (1 − a) against the lateness and 0.3 a for an attack within a note', () => {
    // a = (1.6 − 0.606) ÷ 1.9
    expect((1.6 - LATE) / 1.9).toBeCloseTo(0.523, 3);
    expect([0.515, 0.53].map((a) => second(quarters(60, 64), a, 0))).toEqual([120, 100]);
  });

  it('is weighed by nine tenths of the change of pitch', () => {
    // c = (1 − 0.606 ÷ 1.6) ÷ 0.9; a change without an attack costs nothing where the pitch is that of the note
    expect((1 - LATE / 1.6) / 0.9).toBeCloseTo(0.69, 3);
    expect([0.68, 0.7].map((c) => second(quarters(60, 64), 0, c))).toEqual([120, 100]);
  });

  it('is weighed under a slur by the whole change and eight tenths of the attack', () => {
    // c = 1 − 0.606 ÷ 1.6; a = (1.6 − 0.606) ÷ (0.8 · 1.6 + 0.3)
    expect([0.61, 0.635].map((c) => second(slurred(60, 64), 0, c))).toEqual([120, 100]);
    expect([0.62, 0.64].map((a) => second(slurred(60, 64), a, 0))).toEqual([120, 100]);
  });

  it('is weighed by the attack alone where the pitch stays: 2.6 (1 − a), under a slur 1 − a', () => {
    // a = (2.6 − 0.606) ÷ 2.9; under a slur a = 1 − 0.606, too weak to be one within a note
    expect([0.68, 0.695].map((a) => second(quarters(60, 60), a, 1))).toEqual([120, 100]);
    expect([0.38, 0.41].map((a) => second(slurred(60, 60), a, 0))).toEqual([120, 100]);
  });
});

describe('the third of five notes', () => {
  const found = (evidence: SegmentEvidence, attack = 1, change: Partial<DecodeInput> = {}) =>
    told(
      decodePiece(
        inputOf(quarters(57, 60, 64, 67, 60), evidence, [[0], [100], [200, attack], [300], [400]], 500, change),
      ),
    );
  const KEPT = ['0:0–100', '1:100–200', '2:200–300', '3:300–400', '4:400–500'];
  const LEFT_OUT = ['0:0–100', '1:100–300', '3:300–400', '4:400–500'];
  /** It sounds in so much of the time, one other pitch in so much of it; the others are where they are written. */
  const middle = (own: number, other: number) =>
    sharesOf((midi, from) => {
      if (midi === 64) return own;
      return (midi === 57 && from >= 100) || (midi === 67 && from < 300) ? 0 : 1;
    }, other);

  it('is left out where 4 (1 − share) is more than 2.3 and 0.3 for its attack', () => {
    // share = 1 − 2.6 ÷ 4
    expect([found(middle(0.34, 0.5)), found(middle(0.36, 0.5))]).toEqual([LEFT_OUT, KEPT]);
  });

  it('is kept at another pitch, 1.5 and 4 (1 − share of that)', () => {
    // share = 1 − 1.1 ÷ 4
    expect([found(middle(0, 0.72)), found(middle(0, 0.73))]).toEqual([LEFT_OUT, KEPT]);
  });

  it('is kept whatever its price where every note is to be found', () => {
    const everyNote = { first: null, last: null, noneAdded: true };
    expect(found(middle(0, 0.1), 1, { everyNote })).toEqual(KEPT);
  });

  it('that is not heard costs 2.5, whatever the pitch', () => {
    const silent = heardIn(framesOf([57, 100], [60, 100], [null, 100], [67, 100], [60, 100]));
    // 1.6 (1 − a) + 2.5 against 2.3 + 0.3 a: a = 1.8 ÷ 1.9
    expect([found(silent, 0.94), found(silent, 0.955)]).toEqual([LEFT_OUT, KEPT]);
  });
});

describe('a sound that is in no note', () => {
  /** The last 0.3 s of the first note sound otherwise, from a moment of so much attack and change. */
  function found(attack: number, change: number, first: Partial<NoteSketch> = {}, more: Partial<DecodeInput> = {}) {
    const evidence = heardIn(framesOf([60, 70], [66, 30], [64, 100]));
    const notes = [{ ...first, midi: 60, quarters: 1 }, ...quarters(64)];
    return told(decodePiece(inputOf(notes, evidence, [[0], [70, attack, change], [100]], 200, more)));
  }
  const ADDED = ['0:0–70', 'x:70–100', '1:100–200'];
  const NONE = ['0:0–100', '1:100–200'];

  it('is added for 2.2 where within its note it would cost more', () => {
    // behind the attack of three frames 67 of 97 are the note’s: 4 · 30 ÷ 97, and 1.6 for a plain change within
    expect((2.2 - (4 * 30) / 97) / 1.6).toBeCloseTo(0.602, 3);
    expect([found(0, 0.59), found(0, 0.615), found(0.59, 0), found(0.615, 0)]).toEqual([NONE, ADDED, NONE, ADDED]);
  });

  it('is added for 0.4 where grace notes follow, from a moment of half the strength', () => {
    const more = { graceAfter: [true, false] };
    expect([found(0, 0.5, {}, more), found(0, 0.49, {}, more), found(0, 0.5)]).toEqual([ADDED, NONE, NONE]);
  });

  it('is none where none is to be added', () => {
    expect(found(0.615, 0, {}, { everyNote: { first: null, last: null, noneAdded: true } })).toEqual(NONE);
    expect(found(0.615, 0, {}, { everyNote: { first: null, last: null, noneAdded: false } })).toEqual(ADDED);
  });

  it('is part of an ornament up to two semitones away', () => {
    const trilled = (midi: number) => {
      const evidence = heardIn(framesOf([60, 40], [midi, 60], [64, 100]));
      const notes: NoteSketch[] = [{ midi: 60, quarters: 1, ornament: 'trill' }, ...quarters(64)];
      return decodePiece(inputOf(notes, evidence, [[0], [40], [100]], 200)).length;
    };
    // three away, 37 of 97 frames are the note’s, 4 · 60 ÷ 97 against 2.2 and 0.15 for a tenth of a second beyond a slip
    expect([58, 59, 61, 62, 63, 57].map(trilled)).toEqual([2, 2, 2, 2, 3, 3]);
  });
});

describe('a sound out of silence', () => {
  /** A half note, given up after 0.8 s; its pitch comes back for 0.4 s before the next, which costs 2.4 or an added sound 2.2. */
  function found(attack: number, ...between: readonly (readonly [FramePitch, number])[]) {
    const evidence = heardIn(framesOf([60, 80], ...between, [60, 40], [64, 100], [67, 100]));
    const notes = [{ midi: 60, quarters: 2 }, ...quarters(64, 67)];
    return decodePiece(inputOf(notes, evidence, [[0], [160, attack, 0], [200], [300]], 400)).length;
  }

  it('is no part of the note before where its attack is plain', () => {
    // 2.2 ÷ 2.4
    expect([found(0.9, [null, 80]), found(0.93, [null, 80])]).toEqual([3, 4]);
  });

  it('is not out of silence where 15 of the 100 ms before it sound', () => {
    expect([found(1, [null, 75], [60, 1], [null, 4]), found(1, [null, 75], [60, 2], [null, 3])]).toEqual([4, 3]);
  });
});

describe('how far from where it is looked for', () => {
  it('a note may be: 0.3 s and its length, twice as far where nothing is known', () => {
    const found = (frame: number, endFrame: number, rough: number) => {
      const notes: NoteSketch[] = [
        { midi: 60, quarters: 0.25 },
        { midi: 64, quarters: 0.25 },
      ];
      const evidence = heardIn(framesOf([60, frame], [64, endFrame - frame]));
      const input = inputOf(notes, evidence, [[0], [frame]], endFrame, { roughOnsets: [0, rough] });
      return decodePiece(input).at(-1)?.fromFrame === frame;
    };
    // from 0.25 s on 0.55 s, and 1.1 s
    expect([found(79, 160, 0.25), found(80, 160, 0.25)]).toEqual([true, false]);
    expect([found(133, 233, Number.NaN), found(136, 233, Number.NaN)]).toEqual([true, false]);
  });

  it('the first may be: 0.15 s before the piece begins', () => {
    const from = (frame: number) => {
      const roughOnsets = [1, 2];
      const input = inputOf(quarters(60, 64), EVERYTHING, [[frame], [200]], 300, { roughOnsets, startSeconds: 1 });
      return decodePiece(input)[0]?.fromFrame;
    };
    expect([from(85), from(84)]).toEqual([85, 200]);
  });

  it('is nowhere else where its place is given', () => {
    const everyNote = { first: 1, last: 2, noneAdded: true };
    const input = inputOf(quarters(60, 64), EVERYTHING, [[0], [20, 0], [90, 0], [100]], 200, { everyNote });
    expect(told(decodePiece(input))).toEqual(['0:20–90', '1:90–200']);
  });
});

describe('a gap that is looked at again', () => {
  const TUNE = quarters(60, 62, 64, 65, 67);
  const EVEN: readonly Moment[] = [[0], [100], [200], [300], [400]];
  const segment = (index: number | null, fromFrame: number, toFrame: number): DecodedSegment => ({
    ...{ index, fromFrame, toFrame },
  });
  /** The second note was given the sound of the third, too. */
  const FOUND = [segment(0, 0, 100), segment(1, 100, 300), segment(3, 300, 400), segment(4, 400, 500)];
  const STAYS = told(FOUND);
  const FILLED = ['0:0–100', '1:100–200', '2:200–300 again', '3:300–400 again', '4:400–500'];
  const fill = (frames: readonly FramePitch[], sketches = TUNE, moments = EVEN, found = FOUND) =>
    told(fillGaps(inputOf(sketches, heardIn(frames), moments, frames.length), found));

  it('is filled where its note is there, and what stood beside it is no surer than that', () => {
    expect(fill(framesOf([60, 100], [62, 100], [64, 100], [65, 100], [67, 100]))).toEqual(FILLED);
  });

  it('stays where its note is not there', () => {
    expect(fill(framesOf([60, 100], [62, 200], [65, 100], [67, 100]))).toEqual(STAYS);
  });

  it('is filled from 35 of a hundred frames at the pitch written on, the first four aside', () => {
    // of 96 frames 34 are 35.4 of a hundred, 33 are 34.4
    const own = (frames: number) =>
      fill(framesOf([60, 100], [62, 100], [72, 100 - frames], [64, frames], [65, 100], [67, 100]));
    expect([own(33), own(34)]).toEqual([STAYS, FILLED]);
  });

  it('is filled by a note of three tenths of its time, and of no more than three times', () => {
    const short = (frames: number) =>
      fill(
        framesOf([60, 100], [62, 200 - frames], [64, frames], [65, 100], [67, 100]),
        TUNE,
        EVEN.map((moment) => (moment[0] === 200 ? [300 - frames] : moment)),
      ).length;
    expect([short(29), short(31)]).toEqual([4, 5]);
    const quick = TUNE.map((note, i) => (i === 2 ? { ...note, quarters: 0.25 } : note));
    const long = (frames: number) =>
      fill(
        framesOf([60, 100], [62, 125 - frames], [64, frames], [65, 100], [67, 100]),
        quick,
        [[0], [100], [225 - frames], [225], [325]],
        [segment(0, 0, 100), segment(1, 100, 225), segment(3, 225, 325), segment(4, 325, 425)],
      ).length;
    expect([long(74), long(76)]).toEqual([5, 4]);
  });

  it('is filled by a repeated note that has an attack of its own', () => {
    const again = (attack: number) =>
      fill(
        framesOf([60, 100], [62, 200], [65, 100], [67, 100]),
        quarters(60, 62, 62, 65, 67),
        EVEN.map((moment) => (moment[0] === 200 ? [200, attack] : moment)),
      ).length;
    expect([again(0.39), again(0.41)]).toEqual([4, 5]);
  });

  it('is filled where half of its notes are there', () => {
    // of four missing notes the first so many are there, the others sound a tritone higher
    const there = (count: number) => {
      const midi = [60, 62, 64, 65, 67, 69, 71, 72];
      const sounds = midi.map((m, i) => [i < 2 + count || i > 5 ? m : m + 6, 100] as const);
      return fill(
        framesOf(...sounds),
        quarters(...midi),
        midi.map((_, i) => [100 * i]),
        [segment(0, 0, 100), segment(1, 100, 200), segment(null, 200, 600), segment(6, 600, 700), segment(7, 700, 800)],
      ).length;
    };
    expect([there(1), there(2)]).toEqual([5, 8]);
  });

  it('is filled at both ends', () => {
    const frames = framesOf([60, 100], [62, 100], [64, 100], [65, 100], [67, 100]);
    const begins = [segment(2, 0, 300), segment(3, 300, 400), segment(4, 400, 500)];
    expect(fill(frames, TUNE, EVEN, begins)).toEqual([
      ...['0:0–100 again', '1:100–200 again', '2:200–300 again', '3:300–400 again', '4:400–500'],
    ]);
    const ends = [segment(0, 0, 100), segment(1, 100, 200), segment(2, 200, 500)];
    expect(fill(frames, TUNE, EVEN, ends)).toEqual([
      ...['0:0–100', '1:100–200', '2:200–300 again', '3:300–400 again', '4:400–500 again'],
    ]);
  });

  it('is a jump beyond forty notes, and is left alone', () => {
    const missing = (count: number) => {
      const midi = Array.from({ length: count + 4 }, (_, i) => 60 + ((5 * i) % 12));
      const last = 25 * (count + 2);
      return fill(
        framesOf(...midi.map((m) => [m, 25] as const)),
        midi.map((m) => ({ midi: m, quarters: 0.25 })),
        midi.map((_, i) => [25 * i]),
        [
          ...[segment(0, 0, 25), segment(1, 25, last)],
          ...[segment(count + 2, last, last + 25), segment(count + 3, last + 25, last + 50)],
        ],
      ).length;
    };
    expect([missing(40), missing(41)]).toEqual([44, 4]);
  });

  it('is none where nothing was found, nor where nothing is missing', () => {
    const frames = framesOf([60, 100], [62, 100], [64, 100], [65, 100], [67, 100]);
    expect(fill(frames, TUNE, EVEN, [segment(null, 0, 500)])).toEqual(['x:0–500']);
    const all = [0, 1, 2, 3, 4].map((i) => segment(i, 100 * i, 100 * i + 100));
    expect(fill(frames, TUNE, EVEN, all)).toEqual(told(all));
  });
});
