import { isMeasured, median } from '../../base/index.js';
import type { MeasureContext } from '../context/context.js';
import type { NoteMeasure } from '../types.js';
import { measureNoteLevel } from './note-level.js';
import { measureNotePitch } from './note-pitch.js';

/**
 * Pitch and level of every note. The player's own tuning is the median of all notes.
 *
 * @param context take, features, part, alignment
 * @returns one entry a note, in order
 */
export function measureNotes(context: MeasureContext): NoteMeasure[] {
  const { features, alignment } = context;
  const measured = alignment.notes.map((note) => ({
    index: note.index,
    cents: measureNotePitch(features, note, (note.playedMidi ?? 0) + alignment.offsetSemitones),
    levelDb: measureNoteLevel(features, note),
  }));
  const own = median(measured.map((n) => n.cents).filter(isMeasured<number>));
  return measured.map((n) => ({ ...n, centsFromOwnTuning: isMeasured(n.cents) ? n.cents - own : n.cents }));
}
