import { describe, expect, it } from 'vitest';
import { alignPiece, type PieceNotes } from '../../src/align/align-piece.js';
import { createSegmentEvidence } from '../../src/align/grid/segment-evidence.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { sounding } from '../helpers/frames.js';
import { type FramePitch, framesOf, handGrid } from '../helpers/hand-grid.js';

/**
 * Pieces of a few notes of a second each, as sines without a gap, with what is heard in each frame of a hundredth of a second
 * said by hand.
 */
const HOP = 0.01;
const RATE = 8000;
/** Working value: the order of two sounds is heard from about 20 ms on (Hirsh 1959, from memory). */
const WITHIN_SECONDS = 0.02;

/** Equal temperament, A = 440 Hz; each sine begins at zero. */
function sines(frames: readonly FramePitch[]): Float32Array {
  let phase = 0;
  return Float32Array.from({ length: frames.length * HOP * RATE }, (_, i) => {
    const midi = frames[Math.floor(i / (HOP * RATE))] ?? null;
    phase = midi === null ? 0 : phase + (2 * Math.PI * 440 * 2 ** ((midi - 69) / 12)) / RATE;
    return 0.14 * Math.sin(phase);
  });
}

function align(sketches: readonly NoteSketch[], frames: readonly FramePitch[]): PieceNotes {
  const part = smallPart(sketches);
  const grid = { ...handGrid(frames), hopSeconds: HOP };
  const moments = frames.flatMap((midi, f) => (f === 0 || midi !== frames[f - 1] ? [f] : []));
  const seconds = frames.length * HOP;
  const silent = frames.flatMap((midi, f): [number, number, number][] =>
    midi === null ? [] : [[f * HOP, (f + 1) * HOP, -20]],
  );
  const ones = new Float32Array(moments.length).fill(1);
  return alignPiece(
    {
      features: { ...sounding(seconds, ...silent), signal: sines(frames), signalRateHz: RATE },
      ...{ grid, evidence: createSegmentEvidence(grid), tuningCents: 0, offsetSemitones: 0 },
      boundaries: { frame: Int32Array.from(moments), attack: ones, pitchChange: ones },
    },
    part,
    {
      ...{ firstNote: 0, lastNote: part.notes.length - 1, startSeconds: 0, endSeconds: seconds },
      onsets: part.notes.map(({ onsetQuarters }) => onsetQuarters),
    },
  );
}

const quarters = (...midi: readonly number[]): NoteSketch[] => midi.map((m) => ({ midi: m, quarters: 1 }));
const near = (seconds: number) => ({
  asymmetricMatch: (found: unknown) => Math.abs(Number(found) - seconds) <= WITHIN_SECONDS,
});

describe('a piece of playing', () => {
  it('has every note where its sound begins, and surely so', () => {
    const { notes, added } = align(quarters(60, 64, 67), framesOf([60, 100], [64, 100], [67, 100]));
    expect(notes).toEqual(
      [60, 64, 67].map((playedMidi, index) => ({
        ...{ index, status: 'as-written', playedMidi, confidence: 1 },
        ...{ onsetSeconds: near(index), offsetSeconds: near(index + 1) },
      })),
    );
    expect(added).toEqual([]);
  });

  it('has a wrong note at the pitch that sounds', () => {
    const { notes } = align(quarters(60, 64, 67), framesOf([60, 100], [65, 100], [67, 100]));
    expect(notes.map(({ status, playedMidi }) => [status, playedMidi])).toEqual([
      ['as-written', 60],
      ['other-pitch', 65],
      ['as-written', 67],
    ]);
  });

  it('ends where the last sound ends, and is silent before it is over', () => {
    const { notes } = align(quarters(60, 64), framesOf([60, 100], [64, 60], [null, 40]));
    expect(notes[1]).toMatchObject({ onsetSeconds: near(1), offsetSeconds: near(1.6) });
  });
});

describe('a sound between two notes', () => {
  /** The last so many hundredths of the first note sound at another pitch. */
  const between = (midi: number, frames = 30, sketches = quarters(60, 64, 62)) =>
    align(sketches, framesOf([60, 100 - frames], [midi, frames], [64, 100], [62, 100]));

  it('is told with its time and the note before it', () => {
    expect(between(66).added).toEqual([{ onsetSeconds: near(0.7), offsetSeconds: near(1), midi: 66, afterIndex: 0 }]);
  });

  it('is not told where it is an octave, a twelfth or two octaves of the note before', () => {
    const told = (midi: number) => between(midi).added.length;
    expect([71, 72, 73, 78, 79, 80, 83, 84, 85].map(told)).toEqual([1, 0, 1, 1, 0, 1, 1, 0, 1]);
  });

  it('is the grace note that is written there', () => {
    const graced: NoteSketch[] = [
      { midi: 60, quarters: 1 },
      { midi: 66, quarters: 0, grace: true },
      ...quarters(64, 62),
    ];
    const { notes, added } = between(66, 30, graced);
    expect(added).toEqual([]);
    expect(notes.map(({ index, status, confidence }) => [index, status, confidence])).toEqual([
      [0, 'as-written', 1],
      [1, 'as-written', 0.6],
      [2, 'as-written', 1],
      [3, 'as-written', 1],
    ]);
    // at another pitch it is none
    expect(between(67, 30, graced).added).toHaveLength(1);
  });
});
