import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureTake } from '../../src/measure/index.js';
import { smallPart } from '../demo/small-part.js';
import { type HandNote, type HandOptions, handContext, playEvenly } from '../helpers/hand-context.js';
import { demoPart, hearTake } from '../helpers/heard-take.js';

/** Twenty quarters of a second; the player leaves out the tenth. */
const PART = smallPart(Array.from({ length: 20 }, (_, i) => ({ midi: 60 + (i % 7), quarters: 1 })));
const GONE = 10;

type Change = (note: HandNote) => Partial<HandNote>;

function emptyPlaces(change: Change, options: HandOptions = {}, part = PART, gone: readonly number[] = [GONE]) {
  const notes = playEvenly(part).map((note) => ({
    ...note,
    ...(gone.includes(note.index) ? { status: 'left-out' as const } : {}),
    ...change(note),
  }));
  return measureTake(handContext(part, notes, options)).emptyPlaces;
}

describe('the place of a note that was not heard', () => {
  it('is none when all notes were', () => {
    expect(emptyPlaces(() => ({}), {}, PART, [])).toEqual([]);
  });

  it('whose time passes in silence is silent, as long as written, and as far down as the room', () => {
    const [place, ...more] = emptyPlaces(() => ({}));
    expect(more).toEqual([]);
    expect(place!.index).toBe(GONE);
    // the note before sounds nine tenths of its second
    expect(place!.silentSeconds).toBeCloseTo(1.1, 9);
    expect(place!.writtenSeconds).toBeCloseTo(1, 9);
    expect(place!.closedUpShare).toBeCloseTo(0, 9);
    // notes at −24 dBFS, the room at −80
    expect(place!.fallDb).toBeCloseTo(56, 1);
  });

  it('over which the music closes up is half missing, and the pace of the rest stays what it is', () => {
    const [place] = emptyPlaces(({ index, onset, offset }) =>
      index > GONE ? { onset: onset - 1, offset: offset - 1 } : {},
    );
    expect(place!.closedUpShare).toBeCloseTo(0.5, 9);
    expect(place!.writtenSeconds).toBeCloseTo(1, 9);
    expect(place!.silentSeconds).toBeCloseTo(0.1, 9);
  });

  it('for which the player waits is longer than written', () => {
    const [place] = emptyPlaces(({ index, onset, offset }) =>
      index > GONE ? { onset: onset + 0.5, offset: offset + 0.5 } : {},
    );
    // 2.5 seconds in the place of two
    expect(place!.closedUpShare).toBeCloseTo(-0.25, 9);
  });

  it('in which something sounds has not fallen', () => {
    const [filled] = emptyPlaces(({ index }) => (index === GONE - 1 ? { roomAfterDb: -24 } : {}));
    expect(filled!.fallDb).toBeCloseTo(0, 3);
    const [half] = emptyPlaces(({ index }) => (index === GONE - 1 ? { roomAfterDb: -36 } : {}));
    expect(half!.fallDb).toBeCloseTo(12, 3);
    const [louder] = emptyPlaces(({ index }) => (index === GONE - 1 ? { roomAfterDb: -20 } : {}));
    expect(louder!.fallDb).toBe(0);
  });

  it('up to which the note before is held is not silent', () => {
    const next = playEvenly(PART)[GONE + 1]!.onset;
    const [place] = emptyPlaces(({ index }) => (index === GONE - 1 ? { offset: next } : {}));
    expect(place).toMatchObject({ silentSeconds: 0, fallDb: 0 });
  });

  it.each<[string, HandOptions, readonly number[]]>([
    ['the first and the last note', {}, [0, 19]],
    ['two notes in a row', {}, [9, 10]],
    [
      'a note at which the player began again',
      { alignment: { restarts: [{ stoppedAtIndex: 14, resumedAtIndex: GONE, onsetSeconds: 9.9 }] } },
      [GONE],
    ],
    [
      'a note before the place where the player began again',
      { alignment: { restarts: [{ stoppedAtIndex: 14, resumedAtIndex: GONE + 1, onsetSeconds: 9.9 }] } },
      [GONE],
    ],
  ])('has no entry for %s', (_, options, gone) => {
    expect(emptyPlaces(() => ({}), options, PART, gone)).toEqual([]);
  });

  it('has no entry for a grace note, nor where there is no pace to hold against', () => {
    const graced = smallPart(PART.notes.map((n) => ({ midi: 60, quarters: 1, grace: n.index === GONE })));
    expect(emptyPlaces(() => ({}), {}, graced)).toEqual([]);
    const three = smallPart([60, 62, 64].map((midi) => ({ midi, quarters: 1 })));
    expect(emptyPlaces(() => ({}), {}, three, [1])).toEqual([]);
  });

  it('obeys its laws: gain and another key change nothing, a stretch its seconds only', () => {
    const shift = fc.double({ min: -0.9, max: 0.9, noNaN: true });
    const stretch = fc.double({ min: 0.6, max: 2, noNaN: true });
    fc.assert(
      fc.property(shift, stretch, fc.integer({ min: -12, max: 12 }), (seconds, slower, by) => {
        const moved = ({ index, onset, offset }: HandNote) =>
          index > GONE ? { onset: onset + seconds, offset: offset + seconds } : { onset, offset };
        const [before] = emptyPlaces(moved);
        const [after] = emptyPlaces(
          (note) => {
            const { onset, offset } = moved(note);
            return { onset: onset * slower, offset: offset * slower, levelDb: note.levelDb + by };
          },
          { offsetSemitones: by, floorDb: -80 + by },
        );
        expect(after!.closedUpShare).toBeCloseTo(before!.closedUpShare, 6);
        expect(after!.silentSeconds).toBeCloseTo(slower * before!.silentSeconds, 6);
        expect(after!.writtenSeconds).toBeCloseTo(slower * before!.writtenSeconds, 6);
        // frames of 2 ms do not stretch with the notes
        expect(Math.abs(after!.fallDb - before!.fallDb)).toBeLessThan(0.5);
      }),
      { numRuns: 30 },
    );
  });
});

describe('the place of a note a performed take leaves out', () => {
  // Source: the note the synthesiser was told to leave silent.
  it('is silent, in time, and the only one', () => {
    const part = demoPart();
    const at = part.notes.findIndex(
      (n, i) => i > 20 && n.durationQuarters >= 1 && !n.fermata && !n.slurredFromPrevious,
    );
    const heard = hearTake(part, { roomSeconds: 0, faults: [{ kind: 'missed-note', at }] });
    const places = measureTake(heard).emptyPlaces;
    expect(places.map((p) => p.index)).toEqual([at]);
    expect(places[0]!.fallDb).toBeGreaterThan(20);
    expect(Math.abs(places[0]!.closedUpShare)).toBeLessThan(0.1);
    const written = (part.notes[at]!.durationQuarters * 60) / 92;
    expect(Math.abs(places[0]!.writtenSeconds / written - 1)).toBeLessThan(0.05);
  });
});
