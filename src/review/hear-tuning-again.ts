import type { Take } from '../decode/index.js';
import { type judgeTake, surelyOutOfTune } from '../judge/index.js';
import type { Measurements } from '../measure/index.js';
import { hearPitches } from '../second-ear/index.js';

/** What a take is judged by, with the take itself. */
type Judged = Parameters<typeof judgeTake>[0];

/**
 * Asks a second ear about the notes that would be told as surely out of tune, and about no others: its engine is loaded only
 * where there are some.
 *
 * @param take the recording
 * @param input what it is going to be judged by
 * @returns the measurements, with what the second ear heard of these notes
 */
export async function hearTuningAgain(take: Take, input: Judged): Promise<Measurements> {
  const { alignment, measurements } = input;
  const asked = surelyOutOfTune(input);
  if (asked.length === 0) return measurements;
  const spans = asked.map((index) => {
    const { onsetSeconds = 0, offsetSeconds = 0, playedMidi = 0 } = alignment.notes[index]!;
    return { onset: onsetSeconds, offset: offsetSeconds, midi: playedMidi + alignment.offsetSemitones };
  });
  const heard = await hearPitches(take.samples, take.sampleRateHz, spans);
  const secondEar = new Map(asked.map((index, k) => [index, heard[k]!]));
  const notes = measurements.notes.map((note) => {
    const secondEarCents = secondEar.get(note.index);
    return secondEarCents === undefined ? note : { ...note, secondEarCents };
  });
  return { ...measurements, notes };
}
