import { isMeasured } from '../../base/index.js';
import type { NoteContext } from '../context/context.js';
import type { EchoMeasure } from '../types.js';
import { measureNoteLevel } from './note-level.js';

/** What a wall sends back begins no later than this after the note has ended. */
const MOST_AFTER_SECONDS = 0.5;

/**
 * How much softer each sound that is not in the part is than a note of its pitch shortly before: a wall sends a note back some
 * tenths of a second later, into the next one or the gap behind it.
 *
 * @param context the take with its notes measured
 * @returns one entry a sound that was added or is at another pitch than written, where a note of its pitch has just ended
 */
export function measureEchoes({ features, alignment, notes }: NoteContext): EchoMeasure[] {
  const { added } = alignment;
  const others = alignment.notes.filter((n) => n.status === 'other-pitch');
  return [...added.map((a) => ({ ...a, playedMidi: a.midi })), ...others].flatMap((sound): EchoMeasure[] => {
    const { onsetSeconds, offsetSeconds, playedMidi } = sound;
    if (onsetSeconds === undefined || offsetSeconds === undefined) return [];
    const levelDb = measureNoteLevel(features, { onsetSeconds, offsetSeconds });
    const before = alignment.notes.filter(
      (n) =>
        n.playedMidi === playedMidi &&
        n.onsetSeconds! < onsetSeconds &&
        onsetSeconds - n.offsetSeconds! <= MOST_AFTER_SECONDS,
    );
    const levels = before.map((n) => notes[n.index]!.levelDb).filter(isMeasured<number>);
    if (!isMeasured(levelDb) || levels.length === 0) return [];
    return [{ onsetSeconds, softerDb: Math.max(...levels) - levelDb }];
  });
}
