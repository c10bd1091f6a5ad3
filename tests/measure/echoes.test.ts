import { describe, expect, it } from 'vitest';
import type { Alignment } from '../../src/align/index.js';
import { measureTake } from '../../src/measure/index.js';
import { smallPart } from '../demo/small-part.js';
import { type HandNote, handContext, playEvenly } from '../helpers/hand-context.js';

/** A scale up and down, a quarter each 0.4 s; the notes sound for nine tenths of that, at −24 dBFS. */
const PART = smallPart(Array.from({ length: 12 }, (_, i) => ({ midi: 60 + (i % 6), quarters: 1 })));
const EVEN = playEvenly(PART, 0.4);
const HEARD = 5;
/** The gap after note 5: 0.04 s. */
const GAP = { onsetSeconds: EVEN[HEARD]!.offset, offsetSeconds: EVEN[HEARD + 1]!.onset };

type Added = Alignment['added'][number];

function echoes(extra: Partial<Added>, gapDb = -34, notes: readonly HandNote[] = EVEN) {
  const added = [{ ...GAP, midi: PART.notes[HEARD - 1]!.soundingMidi, afterIndex: HEARD, ...extra }];
  const sounding = notes.map((n) => (n.index === HEARD ? { ...n, roomAfterDb: gapDb } : n));
  return measureTake(handContext(PART, sounding, { alignment: { added } })).echoes;
}

describe('a sound that is not in the part', () => {
  it('at the pitch of the note that has just ended is so much softer than that', () => {
    const [echo, ...more] = echoes({});
    expect(more).toEqual([]);
    expect(echo!.onsetSeconds).toBe(GAP.onsetSeconds);
    // the gap at −34 dBFS
    expect(echo!.softerDb).toBeCloseTo(10, 1);
    expect(echoes({}, -20)[0]!.softerDb).toBeCloseTo(-4, 1);
  });

  it('is no echo at a pitch that was not played just before', () => {
    expect(echoes({ midi: 80 })).toEqual([]);
    // note 3 has ended 0.8 s before the gap begins
    expect(echoes({ midi: PART.notes[HEARD - 2]!.soundingMidi })).toEqual([]);
    // the next note is still to come
    expect(echoes({ midi: PART.notes[HEARD + 1]!.soundingMidi })).toEqual([]);
  });

  it('is held against the loudest of the notes it may come from', () => {
    const twice = EVEN.map((n) => (n.index === HEARD ? { ...n, playedMidi: 64, levelDb: -20 } : n));
    expect(echoes({}, -34, twice)[0]!.softerDb).toBeCloseTo(14, 1);
  });

  it('is a note at another pitch as well, and never one as written', () => {
    const other = (change: Partial<HandNote>) =>
      measureTake(
        handContext(
          PART,
          EVEN.map((n) => (n.index === HEARD ? { ...n, levelDb: -31, ...change } : n)),
        ),
      ).echoes;
    expect(other({})).toEqual([]);
    const [echo, ...more] = other({ status: 'other-pitch', playedMidi: PART.notes[HEARD - 1]!.soundingMidi });
    expect(more).toEqual([]);
    expect(echo).toEqual({ onsetSeconds: EVEN[HEARD]!.onset, softerDb: expect.closeTo(7, 1) });
    expect(other({ status: 'other-pitch', playedMidi: 90 })).toEqual([]);
  });
});
