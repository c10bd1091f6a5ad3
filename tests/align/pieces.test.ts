import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseRenditions as chooseAmong } from '../../src/align/choose-renditions.js';
import type { Run } from '../../src/align/coarse/types.js';
import { estimateTuning } from '../../src/align/estimate-tuning.js';
import { dropMisplaced, localPace } from '../../src/align/expected-timing.js';
import { findSkips } from '../../src/align/find-skips.js';
import { createSegmentEvidence } from '../../src/align/grid/segment-evidence.js';
import type { AlignedNote } from '../../src/align/index.js';
import { isJoined } from '../../src/align/is-joined.js';
import { judgeSegment } from '../../src/align/judge-segment.js';
import { refineOffset } from '../../src/align/refine-offset.js';
import { refineOnset } from '../../src/align/refine-onset.js';
import { listen } from '../../src/features/index.js';
import { smallPart } from '../demo/small-part.js';
import { framesOf, HOP_SECONDS, handGrid } from '../helpers/hand-grid.js';
import { join, noise, RATE, silence, sum, takeOf, tone } from '../helpers/tones.js';

/** Ten quarters a run-through; at 60 a minute each note lasts a second. */
const QUARTERS = Array.from({ length: 20 }, (_, i) => ({ midi: 60 + ((5 * i) % 12), quarters: 1 }));
const PART = smallPart(QUARTERS);

/** A run over some notes, one second each; `silent` are those that were hardly heard. */
function run(firstNote: number, lastNote: number, startSeconds: number, silent: readonly number[] = []): Run {
  const onsets = Array.from({ length: lastNote - firstNote + 1 }, (_, k) =>
    silent.includes(firstNote + k) ? Number.NaN : startSeconds + k,
  );
  return { firstNote, lastNote, startSeconds, endSeconds: startSeconds + onsets.length, onsets };
}

const chooseRenditions = (runs: readonly Run[]) => chooseAmong(runs, PART.notes.length);

describe('what counts of all that was played', () => {
  const notesOf = (runs: readonly Run[]) => chooseRenditions(runs).pieces.map((p) => [p.firstNote, p.lastNote]);

  it('is everything when it was played through', () => {
    const whole = run(0, 19, 1);
    expect(chooseRenditions([whole])).toEqual({ pieces: [whole], restarts: [] });
  });

  it('is the second time where a passage was begun again, and the abandoned one is a restart', () => {
    const { pieces, restarts } = chooseRenditions([run(0, 9, 1), run(6, 19, 13)]);
    expect(pieces.map((p) => [p.firstNote, p.lastNote])).toEqual([
      [0, 5],
      [6, 19],
    ]);
    expect(pieces[0]!.endSeconds).toBe(7);
    expect(restarts).toEqual([{ stoppedAtIndex: 9, resumedAtIndex: 6, onsetSeconds: 13 }]);
  });

  it('is the last of three tries', () => {
    const { restarts } = chooseRenditions([run(0, 9, 1), run(4, 9, 13), run(4, 19, 21)]);
    expect(notesOf([run(0, 9, 1), run(4, 9, 13), run(4, 19, 21)])).toEqual([
      [0, 3],
      [4, 19],
    ]);
    expect(restarts.map((r) => [r.stoppedAtIndex, r.resumedAtIndex])).toEqual([
      [9, 4],
      [9, 4],
    ]);
  });

  it('is both sides of a jump ahead, which is no restart', () => {
    expect(chooseRenditions([run(0, 5, 1), run(12, 19, 8)]).restarts).toEqual([]);
    expect(notesOf([run(0, 5, 1), run(12, 19, 8)])).toEqual([
      [0, 5],
      [12, 19],
    ]);
  });

  it('is not a chance likeness of two notes', () => {
    expect(notesOf([run(9, 10, 0.2), run(0, 19, 4)])).toEqual([[0, 19]]);
    expect(chooseRenditions([run(9, 10, 0.2), run(0, 19, 4)]).restarts).toEqual([]);
  });

  it('has the few notes at both ends looked for that the coarse search passed over, but not a missing half', () => {
    const [piece] = chooseRenditions([run(2, 17, 5)]).pieces;
    expect(piece).toMatchObject({ firstNote: 0, lastNote: 19 });
    expect(piece!.onsets.map((t) => Number.isFinite(t)).indexOf(true)).toBe(2);
    expect(piece!.startSeconds).toBeLessThan(5);
    expect(piece!.endSeconds).toBeGreaterThan(21);
    expect(notesOf([run(8, 19, 5)])).toEqual([[8, 19]]);
  });

  it('has times even where hardly a note was heard', () => {
    for (const silent of [
      [0, 1, 2],
      [1, 2],
    ]) {
      for (const piece of chooseRenditions([run(0, 2, 1, silent)]).pieces) {
        expect([piece.startSeconds, piece.endSeconds].every(Number.isFinite)).toBe(true);
      }
    }
  });

  it('has pieces in order of notes and time whatever was played', () => {
    const runs = fc.array(fc.tuple(fc.integer({ min: 0, max: 19 }), fc.integer({ min: 0, max: 12 })), {
      minLength: 1,
      maxLength: 6,
    });
    fc.assert(
      fc.property(runs, (sketch) => {
        let at = 0;
        const all = sketch.map(([first, length]) => {
          const made = run(first, Math.min(19, first + length), at);
          at = made.endSeconds + 1;
          return made;
        });
        const { pieces } = chooseRenditions(all);
        expect(pieces.length).toBeGreaterThan(0);
        pieces.forEach((piece, k) => {
          expect(piece.onsets).toHaveLength(piece.lastNote - piece.firstNote + 1);
          if (k === 0) return;
          expect(piece.firstNote).toBeGreaterThan(pieces[k - 1]!.lastNote);
          expect(piece.startSeconds).toBeGreaterThanOrEqual(pieces[k - 1]!.endSeconds);
        });
      }),
    );
  });
});

describe('skips', () => {
  const notes = (out: readonly number[]): AlignedNote[] =>
    PART.notes.map(({ index, soundingMidi }) =>
      out.includes(index)
        ? { index, status: 'left-out', confidence: 0.5 }
        : {
            index,
            status: 'as-written',
            playedMidi: soundingMidi,
            onsetSeconds: index,
            offsetSeconds: index + 0.9,
            confidence: 1,
          },
    );

  it('are whole bars left out in a row', () => {
    expect(findSkips(PART, notes([4, 5, 6, 7]))).toEqual([{ fromIndex: 4, toIndex: 7, onsetSeconds: 8 }]);
    expect(findSkips(PART, notes([3, 4, 5, 6, 7, 8]))).toEqual([{ fromIndex: 3, toIndex: 8, onsetSeconds: 9 }]);
  });

  it('are not single notes, nor two or three inside a bar', () => {
    expect(findSkips(PART, notes([2]))).toEqual([]);
    expect(findSkips(PART, notes([1, 2, 9, 10, 11]))).toEqual([]);
  });

  it('at the end are dated by the last sound', () => {
    expect(findSkips(PART, notes([16, 17, 18, 19]))).toEqual([{ fromIndex: 16, toIndex: 19, onsetSeconds: 15.9 }]);
  });

  it('are none when all is played', () => {
    expect(findSkips(PART, notes([]))).toEqual([]);
  });
});

describe('the pace around each note', () => {
  // Source: definition: at 60, 90 and 40 quarters a minute a quarter lasts 1, 2/3 and 1.5 seconds.
  it.each([1, 2 / 3, 1.5])('of even playing is the length of a quarter: %d s', (seconds) => {
    const onsets = PART.notes.map((n) => 2 + seconds * n.onsetQuarters);
    for (const pace of localPace(PART.notes, onsets, 9)) expect(pace).toBeCloseTo(seconds, 9);
  });

  it('is not led astray by a note in the wrong place, nor by unknown ones', () => {
    const onsets = PART.notes.map((n) => (n.index % 4 === 1 ? Number.NaN : n.onsetQuarters));
    onsets[10] = 3;
    for (const pace of localPace(PART.notes, onsets, 9)) expect(Math.abs(pace - 1)).toBeLessThan(0.1);
  });

  it('is the fallback where nothing is known', () => {
    expect([
      ...localPace(
        PART.notes,
        PART.notes.map(() => Number.NaN),
        0.7,
      ),
    ]).toEqual(PART.notes.map(() => 0.7));
  });
});

describe('misplaced onsets', () => {
  const even = PART.notes.map((n) => n.onsetQuarters);
  const pace = new Float64Array(PART.notes.length).fill(1);

  it('contradict both neighbours and are dropped; the others stay', () => {
    const onsets = [...even];
    onsets[8] = 8.95;
    const kept = dropMisplaced(PART.notes, onsets, pace);
    expect(kept[8]).toBeNaN();
    expect(kept.filter((_, i) => i !== 8)).toEqual(even.filter((_, i) => i !== 8));
  });

  it('are not those after a pause: everything comes later, nothing contradicts', () => {
    const onsets = even.map((t, i) => (i >= 8 ? t + 1.5 : t));
    expect(dropMisplaced(PART.notes, onsets, pace)).toEqual(onsets);
  });

  it('are not there in even playing', () => {
    expect(dropMisplaced(PART.notes, even, pace)).toEqual(even);
  });
});

describe('what was played in a stretch of sound', () => {
  const note = PART.notes[0]!;
  const verdict = (shares: Readonly<Record<number, number>>, voicedSeconds = 0.3, offset = 0) => {
    const strongest = Object.entries(shares).sort((a, b) => b[1] - a[1])[0]!;
    return judgeSegment(
      note,
      0,
      1,
      {
        voicedSeconds: () => voicedSeconds,
        heldSeconds: () => voicedSeconds,
        share: (midi) => shares[midi] ?? 0,
        strongest: () => ({ midi: Number(strongest[0]), share: strongest[1] }),
      },
      offset,
    );
  };

  it('is the written note when most of it sounds so', () => {
    expect(verdict({ 60: 0.9, 61: 0.1 })).toMatchObject({ status: 'as-written', playedMidi: 60, confidence: 1 });
  });

  it('is another note only when that is plainly the stronger one', () => {
    expect(verdict({ 60: 0.05, 61: 0.9 })).toMatchObject({ status: 'other-pitch', playedMidi: 61 });
    expect(verdict({ 60: 0.5, 61: 0.6 }).status).toBe('as-written');
    expect(verdict({ 60: 0.1, 61: 0.45 }).status).toBe('unclear');
  });

  it('is surer of another note the plainer it is', () => {
    expect(verdict({ 60: 0.05, 61: 0.95 }).confidence).toBeGreaterThan(verdict({ 60: 0.3, 61: 0.7 }).confidence);
  });

  // Source: harmonics 2, 3 and 4 lie 12, 19 and 24 semitones up; the ear of a program takes one for the other.
  it('must be plainer still for an octave than for a step', () => {
    expect(verdict({ 60: 0.45, 62: 0.9 }).status).toBe('other-pitch');
    expect(verdict({ 60: 0.45, 72: 0.9 }).status).toBe('as-written');
    expect(verdict({ 60: 0.1, 72: 0.9 }).status).toBe('other-pitch');
  });

  it('is no accusation when hardly anything sounds, or when it lies out of any player’s reach', () => {
    expect(verdict({ 61: 0.9 }, 0.01).status).not.toBe('other-pitch');
    expect(verdict({ 60: 0.1, 89: 0.9 }).status).toBe('unclear');
  });

  it('is told in the part’s own pitch when the whole take is transposed', () => {
    expect(verdict({ 62: 0.9 }, 0.3, 2)).toMatchObject({ status: 'as-written', playedMidi: 60 });
    expect(verdict({ 65: 0.9 }, 0.3, 2)).toMatchObject({ status: 'other-pitch', playedMidi: 63 });
  });
});

describe('evidence over a stretch', () => {
  it('is what adding frame by frame gives', () => {
    const frames = framesOf([60, 7], [null, 3], [64, 9], [60, 5], [67, 4]);
    const evidence = createSegmentEvidence(handGrid(frames));
    const border = fc.integer({ min: 0, max: frames.length });
    fc.assert(
      fc.property(border, border, fc.constantFrom(60, 64, 67, 71), (a, b, midi) => {
        const [from, to] = [Math.min(a, b), Math.max(a, b)];
        const sounding = frames.slice(from, to).filter((f) => f !== null);
        expect(evidence.voicedSeconds(from, to)).toBeCloseTo(HOP_SECONDS * sounding.length, 9);
        const share = sounding.length === 0 ? 0 : sounding.filter((f) => f === midi).length / sounding.length;
        expect(evidence.share(midi, from, to)).toBeCloseTo(share, 9);
        expect(evidence.strongest(from, to).share).toBeGreaterThanOrEqual(share - 1e-9);
      }),
    );
  });
});

describe('tuning', () => {
  it.each([-45, -20, 0, 12, 38])('of %d cents is heard in any tones', (cents) => {
    const music = join(tone(57 + cents / 100, 0.5), tone(64 + cents / 100, 0.5), tone(72 + cents / 100, 0.5));
    expect(Math.abs(estimateTuning(listen(takeOf(music))) - cents)).toBeLessThan(2);
  });

  it('of silence is none', () => {
    expect(estimateTuning(listen(takeOf(silence(1))))).toBe(0);
  });
});

describe('the exact moment', () => {
  const quiet = (samples: Float32Array): Float32Array => sum(samples, noise(samples.length / RATE, -80));
  const range = { lowestMidi: 52, highestMidi: 80 };

  it.each([-0.03, 0, 0.04])('of an onset after silence is found from a guess %d s off', (off) => {
    const features = listen(takeOf(quiet(join(silence(0.5), tone(64, 0.5)))), range);
    expect(Math.abs(refineOnset(features, 0.5 + off, null, 0.055) - 0.5)).toBeLessThan(0.008);
  });

  it.each([-0.03, 0, 0.04])('of a new note under a ringing one is found from a guess %d s off', (off) => {
    const features = listen(
      takeOf(quiet(sum(tone(60, 1, 'all-harmonics', 0.1), join(silence(0.5), tone(67, 0.5))))),
      range,
    );
    expect(Math.abs(refineOnset(features, 0.5 + off, 60, 0.055) - 0.5)).toBeLessThan(0.01);
  });

  it('of an onset is the guess itself where nothing begins', () => {
    const features = listen(takeOf(quiet(tone(64, 1))), range);
    expect(refineOnset(features, 0.5, 64, 0.055)).toBe(0.5);
  });

  it('of an end is where the sound stops, or the next onset when it does not', () => {
    const features = listen(takeOf(quiet(join(tone(64, 0.6), silence(0.4), tone(64, 0.5)))), range);
    // levels are smoothed over 10 ms, so an end may read a little early
    expect(Math.abs(refineOffset(features, 0.02, 1) - 0.6)).toBeLessThan(0.02);
    expect(refineOffset(features, 0.02, 0.5)).toBe(0.5);
  });

  it('of an end is not brought forward by a diminuendo', () => {
    const fading = tone(64, 1).map((x, i) => x * 10 ** ((-12 * i) / RATE / 20));
    const features = listen(takeOf(quiet(join(fading, silence(0.4)))), range);
    expect(Math.abs(refineOffset(features, 0.02, 1.3) - 1)).toBeLessThan(0.02);
  });

  it('is joined where the level goes on, and not where it dips', () => {
    const dip = (db: number) => {
      const grid = handGrid(framesOf([60, 60], [64, 60]));
      grid.levelDb.fill(-20 - db, 57, 60);
      return isJoined(grid, 60, 0.045);
    };
    expect([dip(0), dip(2), dip(12), dip(40)]).toEqual([true, true, false, false]);
  });
});
