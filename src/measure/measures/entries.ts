import { median } from '../../base/index.js';
import type { PartNote } from '../../score/index.js';
import type { MeasureContext } from '../context/context.js';
import { paceAround } from '../context/pace-around.js';
import type { EntryMeasure } from '../types.js';

const SIDE_NOTES = 8;
const LEAST_PAIRS = 6;
/** Notes before the rest from each of which the entry is expected. */
const NOTES_BEFORE = 4;
/** After a longer rest the beat cannot be told from the notes any more. */
const LONGEST_REST_QUARTERS = 4;

/**
 * Whether notes after rests come in time.
 *
 * @param context part and alignment
 * @returns one entry a note after a rest; positive is late
 *
 * Source: definition: onset against each of the last onsets before the rest plus what is written between, at the local
 * pace; the median of these, so that one misplaced note does not count.
 */
export function measureEntries(context: MeasureContext): EntryMeasure[] {
  const { part, alignment } = context;
  const played = part.notes.filter((n) => !n.grace);
  return played.slice(1).flatMap((note, k): EntryMeasure[] => {
    const previous = played[k]!;
    const rest = note.restBeforeQuarters;
    if (!isEntry(note, previous)) return [];
    const onset = alignment.notes[note.index]!.onsetSeconds;
    if (onset === undefined || alignment.restarts.some((r) => r.resumedAtIndex === note.index)) return [];
    const pace = paceAround(context, note.index - SIDE_NOTES, note.index + SIDE_NOTES);
    if (pace.pairs < LEAST_PAIRS) return [];
    const before = played.slice(Math.max(0, k + 1 - NOTES_BEFORE), k + 1);
    const expected = expectedOnsets(context, before, note, pace.secondsAQuarter);
    if (expected.length === 0) return [];
    const lateSeconds = onset - median(expected);
    return [
      {
        index: note.index,
        bar: note.bar,
        pass: note.pass,
        restQuarters: rest,
        lateSeconds,
        secondsAQuarter: pace.secondsAQuarter,
      },
    ];
  });
}

/**
 * @param note a note of the part
 * @param previous the note before it, grace notes left out
 * @returns whether a rest stands between them after which the beat can still be told
 */
export function isEntry(note: PartNote, previous: PartNote): boolean {
  const rest = note.restBeforeQuarters;
  return rest > 0 && rest <= LONGEST_REST_QUARTERS && !previous.fermata && note.heldRestBefore !== true;
}

/** When the entry is due, counted from each of the notes before it, as far back as nothing stops the beat. */
function expectedOnsets(
  context: MeasureContext,
  before: readonly PartNote[],
  note: PartNote,
  secondsAQuarter: number,
): number[] {
  const expected: number[] = [];
  for (const previous of [...before].reverse()) {
    if (previous.fermata || (expected.length > 0 && previous.breathAfter !== null)) break;
    const onset = context.alignment.notes[previous.index]!.onsetSeconds;
    if (onset !== undefined) expected.push(onset + (note.onsetQuarters - previous.onsetQuarters) * secondsAQuarter);
    if (context.alignment.restarts.some((r) => r.resumedAtIndex === previous.index)) break;
  }
  return expected;
}
