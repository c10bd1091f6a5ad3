import type { NoteContext } from '../context/context.js';
import type { CrackMeasure, StartMeasure } from '../types.js';
import { pitchReached } from './pitch-reached.js';
import type { StartOfNote } from './starts-of-notes.js';

/** The sound before must have fallen so far below the note, or its start is the end of another. */
const VALLEY_DB = 18;

/**
 * How each note out of silence begins: how long it takes to come to its pitch and level, and whether it speaks at another pitch
 * before.
 *
 * @param context the take with its notes measured
 * @param starts the beginnings of its notes
 * @param cracks notes that crack
 * @returns one entry a note that begins where the sound before has died away, in order
 *
 * Source: definition; the constants are working values, set on takes of the synthesiser and looked at on real players.
 */
export function measureStarts(
  { features, part }: NoteContext,
  starts: readonly StartOfNote[],
  cracks: readonly CrackMeasure[],
): StartMeasure[] {
  return starts.flatMap(({ index, from, until, midi, atLevel, fallenDb }): StartMeasure[] => {
    const atPitch = fallenDb < VALLEY_DB ? null : pitchReached(features, from, until, midi);
    if (atPitch === null) return [];
    const { bar, pass } = part.notes[index]!;
    const crack = cracks.find((one) => one.index === index);
    const { semitones, seconds } = crack ?? {};
    return [
      {
        ...{ index, bar, pass, pitchSeconds: atPitch - from, levelSeconds: atLevel - from },
        ...(semitones === undefined || seconds === undefined ? {} : { crack: { semitones, seconds } }),
      },
    ];
  });
}
