import { notMeasured } from '../../base/index.js';
import type { Part } from '../../score/index.js';
import type { MeasureContext } from '../context/context.js';
import { paceAround } from '../context/pace-around.js';
import type { FermataMeasure } from '../types.js';

/** Notes on each side from which the local tempo is read. */
const SIDE_NOTES = 12;
const LEAST_PAIRS = 4;
/** So many fermatas, one at least every so many bars, mark the ends of phrases, as in a chorale: no length is asked. */
const LEAST_CLOSING = 4;
const MOST_BARS_A_PHRASE = 6;

/**
 * How long each fermata is held.
 *
 * @param context part and alignment
 * @returns written length at the local tempo, sounding length and their ratio; no ratio where fermatas only close phrases
 *
 * The local tempo comes from the notes around it that are not under a fermata.
 */
export function measureFermatas(context: MeasureContext): FermataMeasure[] {
  const onlyClosing = closePhrases(context.part);
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
      if (onlyClosing) return { ...place, writtenSeconds, heldSeconds, ratio: notMeasured('fermatas-close-phrases') };
      const ratio = typeof writtenSeconds === 'number' ? heldSeconds / writtenSeconds : writtenSeconds;
      return { ...place, writtenSeconds, heldSeconds, ratio };
    });
}

/** Whether a part has fermatas as chorales have them, where they show the ends of lines (common practice). */
function closePhrases({ notes, printedBars }: Part): boolean {
  const printed = new Set(notes.filter((n) => n.fermata).map((n) => n.printedId));
  return printed.size >= LEAST_CLOSING && printedBars <= MOST_BARS_A_PHRASE * printed.size;
}
