import { describe, expect, it } from 'vitest';
import { chooseOctave } from '../../src/align/choose-octave.js';
import type { DecodedSegment } from '../../src/align/fine/types.js';
import { createSegmentEvidence } from '../../src/align/grid/segment-evidence.js';
import { nameWrongNotes } from '../../src/align/name-wrong-notes.js';
import { framesOf, handGrid } from '../helpers/hand-grid.js';

describe('the octave of what sounds', () => {
  /** MIDI 65 in every frame, and so much evidence of its octave above. */
  const withOctave = (above: number) =>
    createSegmentEvidence(handGrid(framesOf([65, 40]), (_, midi) => (midi === 77 ? above : 0)));

  it('is the one nearest to what is expected, where both have nearly the same evidence', () => {
    expect(chooseOctave(withOctave(0.8), 0, 40, 76).midi).toBe(77);
    expect(chooseOctave(withOctave(0.8), 0, 40, 66).midi).toBe(65);
  });

  it('is the one that is heard, where the other has plainly less', () => {
    expect(chooseOctave(withOctave(0.3), 0, 40, 76)).toEqual({ midi: 65, share: 1 });
  });

  it('is never one without evidence', () => {
    expect(chooseOctave(withOctave(0), 0, 40, 77).midi).toBe(65);
  });
});

describe('a sound in no note', () => {
  const pitches = [60, 62, 64, 65, 67];
  const pitchOf = ({ fromFrame }: DecodedSegment): number => pitches[fromFrame / 10]!;
  const segmentsOf = (...indexes: (number | null)[]): DecodedSegment[] =>
    indexes.map((index, k) => ({ index, fromFrame: 10 * k, toFrame: 10 * k + 10 }));
  const named = (found: DecodedSegment[]) => nameWrongNotes(found, [0, 1, 2, 3, 4], pitchOf).map((s) => s.index);

  it('right where one note is missing is that note', () => {
    expect(named(segmentsOf(0, 1, null, 3))).toEqual([0, 1, 2, 3]);
  });

  it('stays what it is where no note is missing, or two are', () => {
    expect(named(segmentsOf(0, null, 1))).toEqual([0, null, 1]);
    expect(named(segmentsOf(0, null, 3))).toEqual([0, null, 3]);
  });

  it('stays what it is beside another one, and at either end', () => {
    expect(named(segmentsOf(0, null, null, 2))).toEqual([0, null, null, 2]);
    expect(named(segmentsOf(null, 1, null))).toEqual([null, 1, null]);
  });

  it('stays what it is at the pitch of a neighbour, whose other half it may be', () => {
    const repeated = ({ fromFrame }: DecodedSegment): number =>
      fromFrame === 20 ? 62 : pitchOf({ fromFrame } as never);
    const found = segmentsOf(0, 1, null, 3);
    expect(nameWrongNotes(found, [0, 1, 2, 3, 4], repeated).map((s) => s.index)).toEqual([0, 1, null, 3]);
  });
});
