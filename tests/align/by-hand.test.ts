import { describe, expect, it } from 'vitest';
import { chooseOctave } from '../../src/align/choose-octave.js';
import { chooseRenditions } from '../../src/align/choose-renditions.js';
import { planSearch } from '../../src/align/coarse/plan-search.js';
import { poolGrid } from '../../src/align/coarse/pool-grid.js';
import type { Run } from '../../src/align/coarse/types.js';
import { estimateTuning } from '../../src/align/estimate-tuning.js';
import { dropMisplaced, localPace } from '../../src/align/expected-timing.js';
import { findSkips } from '../../src/align/find-skips.js';
import { findTrough } from '../../src/align/find-trough.js';
import { lowerBound } from '../../src/align/fine/lower-bound.js';
import { nextStrong } from '../../src/align/fine/next-strong.js';
import { durationCost, MOST_MISSED, missedPrice, pauseCost } from '../../src/align/fine/prices.js';
import { fillOnsets } from '../../src/align/fine/rough-onsets.js';
import { splitLeadIns } from '../../src/align/fine/split-lead-ins.js';
import { withCheapest } from '../../src/align/fine/steps.js';
import type { DecodedSegment, DecodeInput } from '../../src/align/fine/types.js';
import {
  passedOverCost,
  swallowedCost,
  unexplainedAfter,
  unexplainedBefore,
} from '../../src/align/fine/unexplained-sound.js';
import type { SegmentEvidence } from '../../src/align/grid/segment-evidence.js';
import { createSegmentEvidence } from '../../src/align/grid/segment-evidence.js';
import type { AlignedNote } from '../../src/align/index.js';
import { isJoined } from '../../src/align/is-joined.js';
import { judgeSegment } from '../../src/align/judge-segment.js';
import { notMadeOut } from '../../src/align/not-made-out.js';
import { refineOffset } from '../../src/align/refine-offset.js';
import { CANDIDATES, type Features } from '../../src/features/index.js';
import type { Part, PartNote } from '../../src/score/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { sounding } from '../helpers/frames.js';
import { framesOf, HOP_SECONDS, handGrid } from '../helpers/hand-grid.js';

/**
 * The small functions of the search on inputs of a few numbers, with what comes out worked out on paper, and what happens on either
 * side of each limit. A quarter lasts a second.
 *
 * Source: definition of each; prices are on the scale of a negative log-likelihood, chosen by us and typed here by hand.
 */
const part = (count: number, change: (i: number) => Partial<NoteSketch> = () => ({})): Part =>
  smallPart(Array.from({ length: count }, (_, i) => ({ midi: 60 + (i % 12), quarters: 1, ...change(i) })));
const even = (count: number) => new Float64Array(count).fill(1);

/** What sounds in a stretch, as a test says it: shares by semitone, and voiced seconds a frame of a hundredth. */
function heard(shares: Readonly<Record<number, number>>, voicedShare = 1): SegmentEvidence {
  const [[midi, share] = ['0', 0]] = Object.entries(shares).sort(([, a], [, b]) => b - a);
  const seconds = (from: number, to: number) => (voicedShare * (to - from)) / 100;
  return {
    voicedSeconds: seconds,
    heldSeconds: seconds,
    share: (wanted) => shares[wanted] ?? 0,
    strongest: () => ({ midi: Number(midi), share }),
  };
}

describe('the price of a time between onsets', () => {
  const note = (change: Partial<PartNote> = {}) => ({ fermata: false, breathAfter: null, ...change }) as PartNote;

  it('is nothing where it is as expected, and grows with what is off', () => {
    expect(durationCost(1, 1, note())).toBe(0);
    // 0.165 off in a width of 0.03 + 0.3
    expect(durationCost(1.165, 1, note())).toBeCloseTo(0.5, 9);
    expect(durationCost(0.835, 1, note())).toBeCloseTo(0.5, 9);
    // of half a second expected the width is 0.18
    expect(durationCost(0.59, 0.5, note())).toBeCloseTo(0.5, 9);
  });

  it('is less for a note that may be longer: at a breath, and at a fermata', () => {
    // widths 0.63 and 2.03
    expect(durationCost(1.63, 1, note({ breathAfter: 'breath' }))).toBeCloseTo(1, 9);
    expect(durationCost(3.03, 1, note({ fermata: true }))).toBeCloseTo(1, 9);
    expect(durationCost(0.67, 1, note({ fermata: true }))).toBeCloseTo(1, 9);
  });

  it('is bent beyond three, and never more than fifteen', () => {
    expect(durationCost(1 + 3 * 0.33, 1, note())).toBeCloseTo(3, 9);
    expect(durationCost(1 + 5 * 0.33, 1, note())).toBeCloseTo(3 + 0.6 * 2, 9);
    expect(durationCost(1 + 22.9 * 0.33, 1, note())).toBeCloseTo(14.94, 6);
    expect(durationCost(99, 1, note())).toBe(15);
  });

  it('is more for a note in less than half of its time', () => {
    // 0.5: 0.5 ÷ 0.33; 0.25: half of 2.5 beside 0.75 ÷ 0.33
    expect(durationCost(0.5, 1, note())).toBeCloseTo(0.5 / 0.33, 9);
    expect(durationCost(0.25, 1, note())).toBeCloseTo(3 + 0.6 * (1.25 + 0.75 / 0.33 - 3), 9);
  });

  it('of a pause is that of a pause where silence explains it', () => {
    expect(pauseCost(2, 1, 1)).toBeCloseTo(1.5, 9);
    expect(pauseCost(2, 1, 0.95)).toBeCloseTo(1.5, 9);
    expect([pauseCost(2, 1, 0.93), pauseCost(1, 1, 1), pauseCost(0.9, 1, 1)]).toEqual([15, 15, 15]);
  });

  it('of notes passed over is less for each from the third on', () => {
    expect([0, 1, 2, 3, 12].map(missedPrice)).toEqual(
      [0, 2.3, 4.6, 6.6, 24.6].map((price) => expect.closeTo(price, 9)),
    );
    expect(MOST_MISSED).toBe(12);
  });
});

describe('places in order', () => {
  it('are found from below', () => {
    const frames = Int32Array.of(2, 4, 4, 9);
    expect([1, 2, 3, 4, 5, 9, 10].map((value) => lowerBound(frames, value))).toEqual([0, 0, 1, 1, 3, 3, 4]);
    expect(lowerBound(Int32Array.of(), 3)).toBe(0);
  });

  it('lead to the next strong one, by attack or by pitch', () => {
    const boundaries = {
      frame: Int32Array.of(1, 2, 3, 4),
      attack: Float32Array.of(0, 0.6, 0, 0.5),
      pitchChange: Float32Array.of(0, 0, 0.9, 0),
    };
    expect([...nextStrong(boundaries, 0.5)]).toEqual([1, 1, 2, 4, 4]);
  });

  it('have the least of their costs', () => {
    const step = (cost: number) => ({ note: 0, boundary: 0, added: false, previous: null, cost });
    expect(withCheapest([step(3), step(1), step(2)]).cheapest).toBe(1);
    expect(withCheapest([]).cheapest).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('unknown onsets', () => {
  const notes = part(6, (i) => (i === 2 ? { quarters: 2 } : {})).notes;

  it('lie between known ones as the score says', () => {
    // quarters 0 1 2 4 5 6
    expect(fillOnsets(notes, [10, NaN, NaN, 14, 15, 16], even(6))).toEqual([10, 11, 12, 14, 15, 16]);
    expect(fillOnsets(notes, [10, NaN, NaN, 12, 15, 16], even(6))).toEqual([10, 10.5, 11, 12, 15, 16]);
  });

  it('before the first and after the last go on at the pace', () => {
    expect(fillOnsets(notes, [NaN, NaN, 12, 14, NaN, NaN], new Float64Array(6).fill(0.5))).toEqual([
      11, 11.5, 12, 14, 14.5, 15,
    ]);
    expect(fillOnsets(notes, [NaN, NaN, NaN, NaN, NaN, NaN], even(6)).every(Number.isNaN)).toBe(true);
  });

  it('are those that contradict both neighbours by 0.3 s and more', () => {
    const onsets = (off: number) => [0, 1, 2 + off, 3, 4, 5];
    const plain = part(6).notes;
    const kept = (off: number) => dropMisplaced(plain, onsets(off), even(6));
    expect(kept(0.59)[2]).toBe(2.59);
    expect(kept(0.61)).toEqual([0, 1, NaN, 3, 4, 5]);
    expect(kept(-0.61)).toEqual([0, 1, NaN, 3, 4, 5]);
    // where the pace is quick it takes 0.3 s
    const quick = (off: number) =>
      dropMisplaced(
        plain,
        onsets(off).map((t, i) => (i === 2 ? 0.4 + off : 0.2 * t)),
        new Float64Array(6).fill(0.2),
      );
    expect([quick(0.29)[2], quick(0.31)[2]]).toEqual([0.4 + 0.29, NaN]);
  });

  it('do not count in the pace, which is the median over six notes on each side, within bounds', () => {
    const many = part(20).notes;
    const at = (secondsAQuarter: number) => many.map((n) => secondsAQuarter * n.onsetQuarters);
    expect([...localPace(many, at(0.1), 1)].every((pace) => pace === 0.15)).toBe(true);
    expect([...localPace(many, at(5), 1)].every((pace) => pace === 4)).toBe(true);
    const known = (count: number) => many.map((n, i) => (i < count ? 0.5 * n.onsetQuarters : NaN));
    expect([localPace(many, known(2), 0.7)[0], localPace(many, known(3), 0.7)[0]]).toEqual([0.7, 0.5]);
    // the first three reach as far as note 8: there all three are near, at note 9 no more
    expect([localPace(many, known(3), 0.7)[6], localPace(many, known(3), 0.7)[7]]).toEqual([0.5, 0.7]);
  });
});

describe('what counts of what was played', () => {
  const run = (firstNote: number, lastNote: number, startSeconds: number, silent: readonly number[] = []): Run => {
    const onsets = Array.from({ length: lastNote - firstNote + 1 }, (_, k) =>
      silent.includes(firstNote + k) ? Number.NaN : startSeconds + k,
    );
    return { firstNote, lastNote, startSeconds, endSeconds: startSeconds + onsets.length, onsets };
  };
  const pieces = (runs: readonly Run[], notes = 40) =>
    chooseRenditions(runs, notes).pieces.map((p) => `${p.firstNote}–${p.lastNote}`);

  it('is a run of three notes that were heard, unless there is nothing else', () => {
    expect(pieces([run(10, 13, 1, [10, 11]), run(20, 39, 9)])).toEqual(['20–39']);
    expect(pieces([run(10, 13, 1, [10]), run(20, 39, 9)])).toEqual(['10–13', '20–39']);
    expect(pieces([run(10, 13, 1, [10, 11])])).toEqual(['10–13']);
  });

  it('is a beginning that was given up where it had four notes, six tenths of them heard', () => {
    const begun = (first: Run) => chooseRenditions([first, run(0, 39, 30)], 40).restarts.length;
    expect([begun(run(0, 3, 1)), begun(run(0, 2, 1))]).toEqual([1, 0]);
    expect([begun(run(0, 9, 1, [1, 2, 3, 4])), begun(run(0, 9, 1, [1, 2, 3, 4, 5]))]).toEqual([1, 0]);
  });

  it('has up to four notes more at both ends', () => {
    expect([pieces([run(4, 35, 10)]), pieces([run(5, 34, 10)])]).toEqual([['0–39'], ['5–34']]);
    const [piece] = chooseRenditions([run(2, 37, 10)], 40).pieces;
    // two notes of a second each are looked for twice as far back, and three seconds on
    expect(piece).toMatchObject({ startSeconds: 6, endSeconds: 49 });
    expect(piece!.onsets.slice(0, 3)).toEqual([NaN, NaN, 10]);
    expect(chooseRenditions([run(2, 37, 1)], 40).pieces[0]!.startSeconds).toBe(0);
  });

  it('ends where it is played again', () => {
    const { pieces: kept, restarts } = chooseRenditions([run(0, 19, 1), run(12, 39, 40)], 40);
    expect(kept.map(({ lastNote, endSeconds }) => [lastNote, endSeconds])).toEqual([
      [11, 13],
      [39, 68],
    ]);
    expect(restarts).toEqual([{ stoppedAtIndex: 19, resumedAtIndex: 12, onsetSeconds: 40 }]);
    const silent = chooseRenditions([run(0, 19, 1, [18, 19]), run(12, 39, 40)], 40);
    expect(silent.restarts[0]!.stoppedAtIndex).toBe(17);
    expect(pieces([run(0, 9, 1), run(10, 39, 20)])).toEqual(['0–9', '10–39']);
    expect(pieces([run(0, 9, 1), run(10, 19, 20), run(5, 39, 40)])).toEqual(['0–4', '5–39']);
  });
});

describe('notes left out in a row', () => {
  const skips = (...out: readonly number[]) => {
    const notes = part(16).notes.map(({ index }): AlignedNote => {
      return out.includes(index)
        ? { index, status: 'left-out', confidence: 0 }
        : { index, status: 'as-written', confidence: 1, onsetSeconds: index, offsetSeconds: index + 0.9 };
    });
    return findSkips(part(16), notes);
  };

  it('are a skip from five on, or where a whole bar is among them', () => {
    expect(skips(5, 6, 7, 8)).toEqual([]);
    expect(skips(5, 6, 7, 8, 9)).toEqual([{ fromIndex: 5, toIndex: 9, onsetSeconds: 10 }]);
    expect(skips(4, 5, 6, 7)).toEqual([{ fromIndex: 4, toIndex: 7, onsetSeconds: 8 }]);
    expect(skips(0, 1, 2, 3)).toHaveLength(1);
    expect(skips(4, 5, 6)).toEqual([]);
    expect(skips(12, 13, 14, 15)).toEqual([{ fromIndex: 12, toIndex: 15, onsetSeconds: 11.9 }]);
    expect(skips(4, 5, 6, 7, 12, 13, 14, 15)).toHaveLength(2);
  });

  it('are dated by nought where nothing was played before or behind', () => {
    expect(skips(...Array(16).keys())).toEqual([{ fromIndex: 0, toIndex: 15, onsetSeconds: 0 }]);
  });

  it('are no skip in a bar of one note', () => {
    const whole = part(8, () => ({ quarters: 4 }));
    const notes = whole.notes.map(
      ({ index }): AlignedNote => ({ index, status: index === 3 ? 'left-out' : 'as-written', confidence: 1 }),
    );
    expect(findSkips(whole, notes)).toEqual([]);
    const two = whole.notes.map(
      ({ index }): AlignedNote => ({
        index,
        status: index === 3 || index === 4 ? 'left-out' : 'as-written',
        confidence: 1,
      }),
    );
    expect(findSkips(whole, two)).toEqual([]);
  });
});

describe('what was played in a stretch', () => {
  const note = { soundingMidi: 60 } as PartNote;
  const verdict = (shares: Record<number, number>, seconds = 0.5, offset = 0) =>
    judgeSegment(note, 0, 100 * seconds, heard(shares), offset);

  it('is another note with six tenths of the sound, three tenths ahead', () => {
    expect(verdict({ 62: 0.61, 60: 0.3 }).status).toBe('other-pitch');
    expect(verdict({ 62: 0.59, 60: 0.2 }).status).toBe('unclear');
    expect(verdict({ 62: 0.64, 60: 0.35 }).status).toBe('as-written');
    expect(verdict({ 62: 0.8 })).toEqual({ status: 'other-pitch', playedMidi: 62, confidence: expect.closeTo(1, 9) });
    expect(verdict({ 62: 0.7, 60: 0.3 }).confidence).toBeCloseTo(0.5, 9);
  });

  it('must be six tenths ahead an octave away, where harmonics lie', () => {
    expect(verdict({ 72: 0.8, 60: 0.19 }).status).toBe('other-pitch');
    expect(verdict({ 72: 0.75, 60: 0.2 }).status).toBe('unclear');
    expect(verdict({ 71: 0.75, 60: 0.2 }).status).toBe('other-pitch');
  });

  it('is no slip wider than thirteen semitones, nor shorter than 30 ms', () => {
    expect([verdict({ 73: 0.9 }).status, verdict({ 74: 0.9 }).status]).toEqual(['other-pitch', 'unclear']);
    expect([verdict({ 62: 0.9 }, 0.03).status, verdict({ 62: 0.9 }, 0.02).status]).toEqual([
      'other-pitch',
      'as-written',
    ]);
  });

  it('is as written with three tenths of the sound, surer the more and the longer', () => {
    expect([verdict({ 60: 0.3 }).status, verdict({ 60: 0.29 }).status]).toEqual(['as-written', 'unclear']);
    expect(verdict({ 60: 0.4 }).confidence).toBeCloseTo(0.5, 9);
    expect(verdict({ 60: 0.8 }, 0.04).confidence).toBeCloseTo(0.5, 9);
    expect(verdict({ 60: 0.2 })).toEqual({ status: 'unclear', playedMidi: 60, confidence: 0.2 });
  });

  it('is told at the pitch of the part', () => {
    expect(verdict({ 74: 0.9 }, 0.5, 12)).toMatchObject({ status: 'other-pitch', playedMidi: 62 });
    expect(verdict({ 72: 0.9 }, 0.5, 12)).toMatchObject({ status: 'as-written', playedMidi: 60 });
  });

  it('of octaves is the one nearest to what is expected, with six tenths of the evidence', () => {
    expect(chooseOctave(heard({ 72: 0.9, 60: 0.55 }), 0, 9, 60)).toEqual({ midi: 60, share: 0.55 });
    expect(chooseOctave(heard({ 72: 0.9, 60: 0.53 }), 0, 9, 60).midi).toBe(72);
    expect(chooseOctave(heard({ 84: 0.9, 60: 0.55, 72: 0.6 }), 0, 9, 60).midi).toBe(60);
    expect(chooseOctave(heard({ 48: 0.9, 60: 0.6 }), 0, 9, 61).midi).toBe(60);
    expect(chooseOctave(heard({ 36: 0.9, 60: 0.6 }), 0, 9, 61).midi).toBe(60);
    // as far away is not nearer
    expect(chooseOctave(heard({ 72: 0.91, 60: 0.9 }), 0, 9, 66).midi).toBe(72);
  });
});

/** A piece of ten quarters from 1 s on, in frames of a hundredth. */
function piece(evidence: SegmentEvidence, change: Partial<DecodeInput> = {}): DecodeInput {
  const frame = Int32Array.from({ length: 120 }, (_, k) => 10 * k);
  return {
    ...{ notes: part(10).notes, graceAfter: [], roughOnsets: [], startSeconds: 1, endSeconds: 12, pace: even(10) },
    boundaries: { frame, attack: new Float32Array(120), pitchChange: new Float32Array(120) },
    ...{ evidence, hopSeconds: 0.01, offsetSemitones: 0, ...change },
  };
}

describe('sound that no note explains', () => {
  const all = heard({ 60: 1 });
  const step = (boundary: number, added = false) => ({ note: 0, boundary, added, previous: null, cost: 0 });

  it('before the first note found costs as if the notes passed over had sounded', () => {
    expect(unexplainedBefore(piece(all), 0, 40)).toBe(0);
    // two notes of a second each; sound of one second, of two and of three
    expect(unexplainedBefore(piece(all), 2, 20)).toBeCloseTo(1.5, 9);
    expect(unexplainedBefore(piece(all), 2, 30)).toBeCloseTo(3, 9);
    expect(unexplainedBefore(piece(all), 2, 40)).toBeCloseTo(3, 9);
    expect(unexplainedBefore(piece(heard({}, 0)), 2, 30)).toBe(0);
  });

  it('after the last note found costs beyond what that one holds', () => {
    const input = piece(all);
    expect(unexplainedAfter(input, 9, step(10), 1190)).toBe(0);
    // note 7 from 8 s on: a second is its own; two more are notes 8 and 9
    expect(unexplainedAfter(input, 7, step(80), 1100)).toBeCloseTo(3, 9);
    expect(unexplainedAfter(input, 7, step(80), 1000)).toBeCloseTo(1.5, 9);
    expect(unexplainedAfter(input, 7, step(80), 900)).toBe(0);
    expect(unexplainedAfter(input, 7, step(80, true), 900)).toBeCloseTo(1.5, 9);
  });

  it('at other pitches within a note costs where notes behind it were passed over', () => {
    // note 2 (midi 62) from 3 s to 7 s, two notes between: two seconds of it at other pitches
    expect(passedOverCost(piece(heard({ 62: 0.5 })), 2, 30, 70, 5)).toBeCloseTo(3, 9);
    expect(passedOverCost(piece(heard({ 62: 0.75 })), 2, 30, 70, 5)).toBeCloseTo(1.5, 9);
    expect(passedOverCost(piece(heard({ 62: 1 })), 2, 30, 70, 5)).toBe(0);
    expect(passedOverCost(piece(heard({ 64: 0.5 }), { offsetSemitones: 2 }), 2, 30, 70, 5)).toBeCloseTo(3, 9);
  });

  it('of an added note costs beyond half a second, by the notes around it', () => {
    expect([swallowedCost(piece(all), 5, 0.5), swallowedCost(piece(all), 5, 1.5)]).toEqual([0, expect.closeTo(1.5, 9)]);
    // notes twice as long cost half
    expect(swallowedCost(piece(all, { pace: new Float64Array(10).fill(2) }), 5, 1.5)).toBeCloseTo(0.75, 9);
    expect(swallowedCost(piece(all, { pace: new Float64Array(10).fill(0.01) }), 5, 0.56)).toBeCloseTo(1.5, 6);
  });
});

describe('notes that were not found', () => {
  const segment = (index: number | null, from: number, to: number): DecodedSegment => ({
    index,
    fromFrame: from,
    toFrame: to,
  });
  const unsure = (shares: Record<number, number>, voiced = 1, ...segments: DecodedSegment[]) =>
    [
      ...notMadeOut(
        piece(heard(shares, voiced)),
        segments.length > 0 ? segments : [segment(2, 300, 500), segment(5, 500, 600)],
      ),
    ].sort();

  it('are unclear where half of their time is filled with sound of another pitch', () => {
    // notes 3 and 4 would last two seconds; three seconds are looked at
    expect(unsure({ 62: 0.3, 65: 0.36 })).toEqual([3, 4]);
    expect(unsure({ 62: 0.3, 65: 0.37 })).toEqual([]);
    expect(unsure({ 62: 0.2, 65: 0.2 }, 0.5)).toEqual([]);
    expect(unsure({}, 0.34)).toEqual([3, 4]);
  });

  it('are not looked at behind the last one, nor where none is missing', () => {
    expect(unsure({}, 1, segment(2, 300, 500))).toEqual([]);
    expect(unsure({}, 1, segment(2, 300, 500), segment(3, 500, 600))).toEqual([]);
    expect(unsure({}, 1, segment(2, 300, 500), segment(null, 500, 550), segment(4, 550, 600))).toEqual([3]);
  });
});

describe('a sound that leads in', () => {
  /** Note 1 (midi 61) from frame 100 to 200; a lead-in before a boundary, where the pitch changes by so much. */
  function split(
    at: number,
    { change = 0.6, own = 0.7, ofNote = 0.1, behind = 0.8, midi = 63, before = 50, length = 100 } = {},
  ) {
    const evidence: SegmentEvidence = {
      ...{ voicedSeconds: () => 1, heldSeconds: () => 1 },
      share: (_, from) => (from === 100 ? ofNote : behind),
      strongest: (from) => (from === 100 ? { midi, share: own } : { midi: before, share: 0.9 }),
    };
    const boundaries = {
      frame: Int32Array.of(100, at),
      attack: new Float32Array(2),
      pitchChange: Float32Array.of(0, change),
    };
    const segments = [
      { index: 0, fromFrame: 0, toFrame: 100 },
      { index: 1, fromFrame: 100, toFrame: 100 + length },
    ];
    return splitLeadIns(piece(evidence, { boundaries }), segments).length === 3;
  }

  it('lasts from 0.05 s to 0.25 s, and no more than half of its note', () => {
    expect([104, 105, 125, 126].map((at) => split(at))).toEqual([false, true, true, false]);
    expect([115, 116].map((at) => split(at, { length: 30 }))).toEqual([true, false]);
  });

  it('is of its own pitch, up to four semitones away, and not that of the note before', () => {
    expect([split(115, { own: 0.6 }), split(115, { own: 0.59 })]).toEqual([true, false]);
    expect([65, 66, 57, 56].map((midi) => split(115, { midi }))).toEqual([true, false, true, false]);
    expect(split(115, { before: 63 })).toBe(false);
  });

  it('ends where the pitch changes, and its note is heard behind it and hardly in it', () => {
    expect([split(115, { change: 0.5 }), split(115, { change: 0.49 })]).toEqual([true, false]);
    expect([split(115, { ofNote: 0.2 }), split(115, { ofNote: 0.21 })]).toEqual([true, false]);
    expect([split(115, { behind: 0.7 }), split(115, { behind: 0.69 })]).toEqual([true, false]);
  });
});

describe('a dip between notes', () => {
  /** Levels a frame of 6 ms: twenty frames are 0.12 s. */
  const grid = (levels: readonly number[]) => ({
    ...handGrid(framesOf([60, levels.length])),
    levelDb: Float32Array.from(levels),
  });
  const flat = (change: Record<number, number> = {}) => Array.from({ length: 100 }, (_, f) => change[f] ?? -20);

  it('of 5 dB parts them', () => {
    expect([
      findTrough(grid(flat({ 50: -24.9 })), 45, 55, 99),
      findTrough(grid(flat({ 50: -25.1 })), 45, 55, 99),
    ]).toEqual([null, 50]);
    expect([isJoined(grid(flat({ 50: -24.9 })), 50, 0.06), isJoined(grid(flat({ 50: -25.1 })), 50, 0.06)]).toEqual([
      true,
      false,
    ]);
  });

  it('is looked for where it is asked, and the last of equals counts', () => {
    expect(findTrough(grid(flat({ 44: -40 })), 45, 55, 99)).toBeNull();
    expect(findTrough(grid(flat({ 48: -40, 52: -40 })), 45, 55, 99)).toBe(52);
    expect(findTrough(grid(flat()), 60, 50, 99)).toBeNull();
    // ten frames back and five on
    expect([39, 40, 55, 56].map((f) => isJoined(grid(flat({ [f]: -40 })), 50, 0.06))).toEqual([
      true,
      false,
      false,
      true,
    ]);
  });

  it('is compared with the louder moments within 0.12 s on both sides', () => {
    const soft = (from: number, to: number) =>
      flat(Object.fromEntries(Array.from({ length: to - from }, (_, k) => [from + k, -40])));
    // nothing is as loud any more behind it
    expect(findTrough(grid(soft(50, 100)), 45, 55, 99)).toBeNull();
    expect(findTrough(grid(soft(50, 70)), 45, 55, 99)).toBe(55);
    expect(findTrough(grid(soft(50, 77)), 45, 55, 99)).toBeNull();
    // what sounds behind the end of the second note is not its own
    expect(findTrough(grid(soft(50, 70)), 45, 55, 69)).toBeNull();
  });
});

describe('the end of a note', () => {
  // Power is averaged over 10 ms, levels lie 2 ms apart: an end is found within that.
  const end = (features: Features, next = 2) => refineOffset(features, 1, next);

  it('is where all that follows is softer by 5 dB', () => {
    expect(end(sounding(3, [1, 1.6, -20]))).toBeCloseTo(1.6, 1);
    expect(end(sounding(3, [1, 1.6, -20], [1.6, 3, -24.5]))).toBe(2);
    expect(end(sounding(3, [1, 1.6, -20], [1.6, 3, -26]))).toBeCloseTo(1.6, 1);
    expect(end(sounding(3, [1, 3, -20]))).toBe(2);
  });

  it('is none where the sound comes back', () => {
    expect(end(sounding(3, [1, 1.4, -20], [1.4, 1.5, -50], [1.5, 1.7, -20]))).toBeCloseTo(1.7, 1);
  });

  it('is not the fall from the attack, in its first tenth of a second', () => {
    expect(end(sounding(3, [1, 1.08, -10], [1.08, 1.7, -20]))).toBeCloseTo(1.7, 1);
    expect(end(sounding(3, [1, 1.15, -10], [1.15, 1.7, -20]))).toBeCloseTo(1.15, 1);
  });

  it('is before the attack of the next, which may begin 80 ms early', () => {
    expect(end(sounding(3, [1, 1.6, -20], [1.94, 3, -20]))).toBeCloseTo(1.6, 1);
    expect(end(sounding(3, [1, 1.6, -20], [1.88, 3, -20]))).toBe(2);
  });

  it('is the next onset where hardly a frame lies between', () => {
    expect(end(sounding(3, [1, 1.6, -20]), 1.008)).toBe(1.008);
  });
});

describe('the tuning of a take', () => {
  const heardAt = (...frames: readonly (readonly [midi: number, clarity: number, db: number])[]) => {
    const features = sounding(1);
    frames.forEach(([midi, clarity, db], f) => {
      features.candidateMidi[CANDIDATES * f] = midi;
      features.candidateClarity[CANDIDATES * f] = clarity;
      features.power.fill(10 ** (db / 10), Math.round((f * 0.005) / 0.002), Math.round(((f + 1) * 0.005) / 0.002));
    });
    return estimateTuning(features);
  };

  it('is that of clear frames, whichever semitone they are at', () => {
    expect(heardAt([60.2, 0.9, -20], [67.2, 0.9, -20])).toBeCloseTo(20, 3);
    expect(heardAt([60.2, 0.9, -20], [67.4, 0.79, -20])).toBeCloseTo(20, 3);
    expect(heardAt([60.1, 0.9, -20], [67.3, 0.9, -20])).toBeCloseTo(20, 3);
    expect(heardAt([60.9, 0.9, -20])).toBeCloseTo(-10, 3);
    expect(heardAt()).toBe(0);
  });

  it('leans to what is louder and clearer', () => {
    expect(heardAt([60, 0.9, -40], [60.2, 0.9, -20])).toBeGreaterThan(15);
  });
});

describe('the take at the pace of the coarse search', () => {
  it('is means over four frames; what does not fill four is left out', () => {
    const pooled = poolGrid(handGrid(framesOf([60, 6], [null, 4])));
    expect([pooled.steps, pooled.stepSeconds]).toEqual([2, expect.closeTo(4 * HOP_SECONDS, 9)]);
    expect([...pooled.voicing]).toEqual([1, 0.5]);
    const into = new Float32Array(41).fill(9);
    pooled.read(1, into);
    expect([into[10], into[9], into[11]]).toEqual([0.5, 0, 0]);
    expect(poolGrid(handGrid(framesOf([60, 3]))).steps).toBe(1);
  });

  it('gives each note its time at the average pace', () => {
    const grid = handGrid(framesOf([60, 400]));
    const of = part(10, (i) => (i === 3 ? { quarters: 2, rest: 1 } : i === 5 ? { grace: true } : {}));
    // a hundred voiced steps for ten quarters: ten steps a quarter, eleven and a ninth a note
    const plan = planSearch(of, grid, poolGrid(grid), 2);
    expect(plan.noteOf).toEqual([0, 1, 2, 3, 4, 6, 7, 8, 9]);
    expect(plan.pitchOf[0]).toBe(12);
    expect(plan.unit).toBeCloseTo(9 / 100, 9);
    expect([plan.mostSteps[0], plan.mostSteps[3]]).toEqual([expect.closeTo(14, 6), expect.closeTo(28, 6)]);
    expect([plan.leastSteps[0], plan.leastSteps[3]]).toEqual([expect.closeTo(3, 6), expect.closeTo(6, 6)]);
    expect([...plan.afterRest]).toEqual([0, 0, 0, 1, 0, 0, 0, 0, 0]);
    // a bar begins with notes 0, 3 and 7
    expect([...plan.entryPrice].map((price) => price > 0)).toEqual(
      of.notes.filter((n) => !n.grace).map((n, i, all) => n.bar === all[i - 1]?.bar),
    );
    expect(Math.max(...plan.entryPrice)).toBe(0.25);
    expect(planSearch(of, grid, poolGrid(grid), 2, 2).mostSteps[0]).toBeCloseTo(7, 6);
    const short = handGrid(framesOf([60, 8]));
    expect(planSearch(of, short, poolGrid(short), 0)).toMatchObject({ unit: 1 });
    expect([
      planSearch(of, short, poolGrid(short), 0).mostSteps[0],
      planSearch(of, short, poolGrid(short), 0).leastSteps[0],
    ]).toEqual([2, 1]);
  });
});

describe('evidence over a stretch', () => {
  const evidence = createSegmentEvidence(handGrid(framesOf([60, 10], [null, 10], [64, 20])));

  it('is seconds of sound, and the share of each semitone in it', () => {
    expect(evidence.voicedSeconds(0, 40)).toBeCloseTo(30 * HOP_SECONDS, 9);
    expect(evidence.heldSeconds(-5, 99)).toBeCloseTo(30 * HOP_SECONDS, 9);
    expect([evidence.share(60, 0, 40), evidence.share(64, 0, 40), evidence.share(62, 0, 40)]).toEqual([
      expect.closeTo(1 / 3, 6),
      expect.closeTo(2 / 3, 6),
      0,
    ]);
    expect([evidence.share(60, 10, 20), evidence.share(40, 0, 40), evidence.share(99, 0, 40)]).toEqual([0, 0, 0]);
    expect(evidence.strongest(0, 40)).toEqual({ midi: 64, share: expect.closeTo(2 / 3, 6) });
    expect(evidence.strongest(10, 20)).toEqual({ midi: 50, share: 0 });
  });
});
