import type { NoteContext } from '../context/context.js';
import type { CrackMeasure, StartMeasure } from '../types.js';
import { pitchReached } from './pitch-reached.js';
import { startOfNote } from './start-of-note.js';

/** The sound before must have fallen so far below the note, or its start is the end of another. */
const VALLEY_DB = 18;

/**
 * How each note out of silence begins: how long it takes to come to its pitch and level, and whether it speaks at another pitch
 * before.
 *
 * @param context the take with its notes measured
 * @param cracks notes that crack
 * @returns one entry a note that begins where the sound before has died away, in order
 *
 * Source: definition; the constants are working values, set on takes of the synthesiser and looked at on real players.
 */
export function measureStarts(context: NoteContext, cracks: readonly CrackMeasure[]): StartMeasure[] {
  return context.part.notes.flatMap((note): StartMeasure[] => {
    const start = note.grace || note.slurredFromPrevious ? null : startOfNote(context, note.index, VALLEY_DB);
    if (start === null) return [];
    const { from, atLevel } = start;
    const atPitch = pitchReached(context.features, from, start.until, start.midi);
    if (atPitch === null) return [];
    const crack = cracks.find(({ index }) => index === note.index);
    return [
      {
        ...{ index: note.index, bar: note.bar, pass: note.pass },
        ...{ pitchSeconds: atPitch - from, levelSeconds: atLevel - from },
        ...(crack === undefined ? {} : { crack: { semitones: crack.semitones, seconds: crack.seconds } }),
      },
    ];
  });
}
