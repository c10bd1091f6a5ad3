import { describe, expect, it } from 'vitest';
import { measureTake } from '../../src/measure/index.js';
import { smallPart } from '../demo/small-part.js';
import { type HandNote, handContext, playEvenly } from '../helpers/hand-context.js';

/** Twenty quarters of a second; before the eighth note, at the first beat of the third bar, a rest of two. */
const REST_AFTER = 7;
const PART = smallPart(
  Array.from({ length: 20 }, (_, i) => ({ midi: 60 + (i % 7), quarters: 1, rest: i === REST_AFTER + 1 ? 2 : 0 })),
);

function rests(change: (note: HandNote) => Partial<HandNote> = () => ({}), extra: HandNote | null = null) {
  const notes = playEvenly(PART).map((note) => ({ ...note, ...change(note) }));
  const heard = handContext(PART, extra === null ? notes : [...notes, extra]);
  return measureTake(handContext(PART, notes, { alignment: {} }) && heard).rests;
}

describe('a written rest', () => {
  it('in which nothing sounds is silent, where it is written and as long', () => {
    const [rest, ...more] = rests();
    expect(more).toEqual([]);
    expect(rest).toMatchObject({ index: 7, toIndex: 8, bar: '3', beat: 1, quarters: 2, state: 'silent' });
    expect(rest!.seconds).toBeCloseTo(2, 6);
  });

  it('over which the note before is held is rung over', () => {
    const [rest] = rests((note) => (note.index === REST_AFTER ? { offset: note.onset + 2.8 } : {}));
    expect(rest!.state).toBe('rung-over');
  });

  it('in which another pitch sounds is played into, when and where it sounds', () => {
    // lead-in 0.5 s, the rest begins at 8.5 s: a sound from 9.6 to 10.2 s is in its second beat
    const sound: HandNote = {
      ...playEvenly(PART)[REST_AFTER]!,
      onset: 9.6,
      offset: 10.2,
      playedMidi: 72,
    };
    const [rest] = rests(undefined, sound);
    expect(rest).toMatchObject({ state: 'played-into', midi: 72, bar: '3' });
    expect(rest!.beat).toBeCloseTo(2.1, 1);
    expect(rest!.onsetSeconds).toBeCloseTo(9.6, 1);
  });

  it('of less than a beat is not looked at', () => {
    const short = smallPart(
      Array.from({ length: 20 }, (_, i) => ({
        midi: 60 + (i % 7),
        quarters: i === 7 ? 0.5 : 1,
        rest: i === 8 ? 0.5 : 0,
      })),
    );
    expect(measureTake(handContext(short, playEvenly(short))).rests).toEqual([]);
  });
});

describe('a sound that is not in the part', () => {
  const placed = (onsetSeconds: number) =>
    measureTake(
      handContext(PART, playEvenly(PART), {
        alignment: { added: [{ onsetSeconds, offsetSeconds: onsetSeconds + 0.3, midi: 75, afterIndex: REST_AFTER }] },
      }),
    ).addedPlaces;

  it('stands in the bar of the rest it sounds in, also when it comes a little early', () => {
    expect(placed(8.45)).toMatchObject([{ bar: '3', beat: 1 }]);
    expect(placed(9.5)[0]).toMatchObject({ bar: '3' });
    expect(placed(9.5)[0]!.beat).toBeCloseTo(2, 1);
  });

  it('stands in the bar of the note it sounds in before that', () => {
    expect(placed(7.7)).toMatchObject([{ bar: '2' }]);
  });
});
