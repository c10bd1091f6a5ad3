import { isMeasured } from '../base/index.js';
import type { Take } from '../decode/index.js';
import type { judgeTake } from '../judge/index.js';
import { type Measurements, measureToneColour } from '../measure/index.js';
import { type Colour, hearColours } from '../second-ear/index.js';

/** What a take is judged by, with the take itself. */
type Judged = Parameters<typeof judgeTake>[0];

/** Long notes whose harmonics are looked at, at most: enough for a slope. */
const MOST_NOTES = 80;

/**
 * Has the harmonics of long notes heard by another engine, where the teacher's brief gives the sound points, and nowhere else:
 * nobody else waits for the engine.
 *
 * @param take the recording
 * @param input what it is going to be judged by
 * @returns the measurements, with the colour of the tone where it was asked for
 */
export async function hearColour(take: Take, { alignment, brief, measurements }: Judged): Promise<Measurements> {
  if (alignment.fit !== 'this-part' || brief === undefined || brief.criteria.sound.points <= 0) return measurements;
  const midiOf = (index: number): number => (alignment.notes[index]!.playedMidi ?? 0) + alignment.offsetSemitones;
  const steady = measurements.heldNotes.filter(({ vibrato }) => vibrato === undefined).slice(0, MOST_NOTES);
  const spans = steady.map(({ index }) => {
    const { onsetSeconds = 0, offsetSeconds = 0 } = alignment.notes[index]!;
    const { cents } = measurements.notes[index]!;
    const midi = midiOf(index) + (isMeasured(cents) ? cents / 100 : 0);
    return { onset: onsetSeconds, offset: offsetSeconds, midi };
  });
  const heard = await hearColours(take.samples, take.sampleRateHz, spans);
  const colours = steady.flatMap(({ index }, k) => {
    const colour = heard[k]!;
    return isMeasured<Colour>(colour) ? [[index, colour] as const] : [];
  });
  return { ...measurements, toneColour: measureToneColour(measurements, midiOf, new Map(colours)) };
}
