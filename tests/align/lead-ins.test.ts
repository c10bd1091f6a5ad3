import { describe, expect, it } from 'vitest';
import { performTake } from '../../src/demo/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { hearSamples, PLAIN } from '../helpers/heard-take.js';

/**
 * The player reads grace notes that the part does not have. The synthesiser decides when each begins before it renders them.
 */
const TUNE = [60, 64, 62, 65, 64, 69, 65, 69, 67, 71, 69, 72];
const WITH_GRACE = new Set([3, 6, 9]);
/** Working value: the order of two sounds is heard from about 20 ms on (Hirsh 1959, from memory). */
const WITHIN_SECONDS = 0.025;

const plain: NoteSketch[] = TUNE.map((midi) => ({ midi, quarters: 1 }));
const written = smallPart(plain);

function graced(semitones: number): NoteSketch[] {
  return plain.flatMap((note, i) =>
    WITH_GRACE.has(i)
      ? [{ midi: note.midi + semitones, quarters: 0, grace: true, slurredToNext: true } as NoteSketch, note]
      : [note],
  );
}

describe.each(['clarinet', 'flute', 'brass'] as const)('a grace note that is not in the part, %s', (voice) => {
  it.each([1, 2, -1])('%d semitones from its note is heard as a sound of its own', (semitones) => {
    const played = performTake(smallPart(graced(semitones)), { ...PLAIN, voice });
    const { alignment } = hearSamples(written, played.samples, played.sampleRateHz);
    const graces = played.truth.filter((_, i) => graced(semitones)[i]!.grace === true);
    const mains = played.truth.filter((_, i) => graced(semitones)[i]!.grace !== true);
    // one of the three may go under at the end of the note before, which is no accusation
    expect(alignment.added.length).toBeGreaterThanOrEqual(2);
    for (const { midi, afterIndex, leadsIn, onsetSeconds } of alignment.added) {
      const grace = graces[[...WITH_GRACE].indexOf(afterIndex + 1)]!;
      expect([midi, leadsIn]).toEqual([TUNE[afterIndex + 1]! + semitones, true]);
      expect(Math.abs(onsetSeconds - grace.onsetSeconds)).toBeLessThan(WITHIN_SECONDS);
    }
    expect(alignment.notes.map(({ status }) => status)).toEqual(TUNE.map(() => 'as-written'));
    alignment.notes.forEach(({ onsetSeconds }, i) => {
      expect(Math.abs(onsetSeconds! - mains[i]!.onsetSeconds)).toBeLessThan(WITHIN_SECONDS);
    });
  });

  it('is not heard where there is none', () => {
    const played = performTake(written, { ...PLAIN, voice });
    expect(hearSamples(written, played.samples, played.sampleRateHz).alignment.added).toEqual([]);
  });
});
