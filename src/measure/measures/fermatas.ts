import { notMeasured } from '../../base/index.js';
import type { MeasureContext } from '../context/context.js';
import { paceAround } from '../context/pace-around.js';
import type { FermataMeasure } from '../types.js';

/** Notes on each side from which the local tempo is read. */
const SIDE_NOTES = 12;
const LEAST_PAIRS = 4;

/**
 * How long each fermata is held.
 *
 * @param context part and alignment
 * @returns written length at the local tempo, sounding length and their ratio
 *
 * Source: definition; the local tempo comes from the notes around it that are not under a fermata.
 */
export function measureFermatas(context: MeasureContext): FermataMeasure[] {
  return context.part.notes
    .filter((n) => n.fermata)
    .map((note) => {
      const place = { index: note.index, bar: note.bar, pass: note.pass };
      const { onsetSeconds, offsetSeconds } = context.alignment.notes[note.index]!;
      const pace = paceAround(context, note.index - SIDE_NOTES, note.index + SIDE_NOTES);
      const writtenSeconds =
        pace.pairs < LEAST_PAIRS ? notMeasured('tempo-unknown-here') : note.durationQuarters * pace.secondsAQuarter;
      if (onsetSeconds === undefined || offsetSeconds === undefined) {
        const why = notMeasured('note-not-heard');
        return { ...place, writtenSeconds, heldSeconds: why, ratio: why };
      }
      const heldSeconds = offsetSeconds - onsetSeconds;
      const ratio = typeof writtenSeconds === 'number' ? heldSeconds / writtenSeconds : writtenSeconds;
      return { ...place, writtenSeconds, heldSeconds, ratio };
    });
}
