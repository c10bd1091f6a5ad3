import { describe, expect, it } from 'vitest';
import { type MeasureContext, measureTake, type TonguedAirPlace } from '../../src/measure/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { handContext, playEvenly } from '../helpers/hand-context.js';
import { hearTake } from '../helpers/heard-take.js';

/** Eight quarters of a second each. */
const QUARTERS: readonly NoteSketch[] = [60, 64, 62, 67, 65, 69, 64, 60].map((midi) => ({ midi, quarters: 1 }));

function placesOf(context: MeasureContext): readonly TonguedAirPlace[] {
  const { tonguedAir } = measureTake(context);
  if ('notMeasured' in tonguedAir) throw new Error(tonguedAir.notMeasured.code);
  return tonguedAir;
}

/** Every note sounds for such a share of its second, and is then silent. */
function sounding(share: number, sketches = QUARTERS): readonly TonguedAirPlace[] {
  const part = smallPart(sketches);
  return placesOf(
    handContext(
      part,
      playEvenly(part).map((note, i) => ({ ...note, offset: 0.5 + i + share })),
    ),
  );
}

describe('the tone between tongued notes', () => {
  it('does not sag where it goes on', () => {
    const places = sounding(1);
    expect(places.map(({ index, toIndex }) => [index, toIndex])).toEqual([0, 1, 2, 3, 4, 5, 6].map((i) => [i, i + 1]));
    for (const { sagDb, dipDb } of places) {
      expect(Math.abs(sagDb)).toBeLessThan(0.05);
      expect(dipDb).toBeCloseTo(0, 6);
    }
  });

  it.each([
    // of 250 ms before the onset and 100 ms after it so much is silent: 10 log10(350 ÷ (350 − silent))
    [0.95, 0.67],
    [0.9, 1.46],
    [0.8, 3.68],
  ])('sags where it sounds for %d of its time by %d dB', (share, db) => {
    for (const { sagDb } of sounding(share)) expect(Math.abs(sagDb - db)).toBeLessThan(0.1);
  });

  it('is louder than it was for no more than what is between the notes', () => {
    const part = smallPart(QUARTERS);
    const louder = playEvenly(part).map((note, i) => ({ ...note, levelDb: i < 4 ? -24 : -18, offset: 1.5 + i }));
    // both levels count alike: the step itself is 1.1 dB over the mean of the two for a part of the window
    for (const { sagDb } of placesOf(handContext(part, louder))) expect(Math.abs(sagDb)).toBeLessThan(2);
  });

  it.each<readonly [string, Partial<NoteSketch>, readonly number[]]>([
    ['a slur', { slurredToNext: true }, [3]],
    ['a dot', { articulations: ['staccato'] }, [3]],
    ['a breath', { breathAfter: 'breath' }, [3]],
    ['an accent', { articulations: ['accent'] }, [2, 3]],
    ['an ornament', { ornament: 'trill' }, [2, 3]],
    ['a fermata', { fermata: true }, [2, 3]],
    ['the pitch of the next note', { midi: 65 }, [3]],
  ])('is not looked at after a note with %s', (_, change, missing) => {
    const places = sounding(
      0.9,
      QUARTERS.map((note, i) => (i === 3 ? { ...note, ...change } : note)),
    );
    expect(places.map(({ index }) => index)).toEqual([0, 1, 2, 3, 4, 5, 6].filter((i) => !missing.includes(i)));
  });

  it('is not told of a room that rings', () => {
    const part = smallPart(QUARTERS.map((note, i) => ({ ...note, rest: i % 3 === 0 && i > 0 ? 1 : 0 })));
    const { tonguedAir } = measureTake(hearTake(part, { roomSeconds: 1.8, signalToNoiseDb: 70 }));
    expect(tonguedAir).toEqual({ notMeasured: { code: 'room-rings', facts: {} } });
  });
});
