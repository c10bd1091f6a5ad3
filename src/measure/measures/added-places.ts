import type { MeasureContext } from '../context/context.js';
import { type PlaceInScore, placeInScore } from '../place-in-score.js';

/** A sound that begins in this much of the note before a rest, or later, belongs to the rest. */
const INTO_REST_SHARE = 0.5;

/**
 * Where in the part each sound that is not in it stands: between its neighbours as time has it, and in the rest that is
 * written there.
 *
 * @param context part and alignment
 * @returns one place an added note, in their order
 */
export function measureAddedPlaces({ part, alignment }: MeasureContext): PlaceInScore[] {
  return alignment.added.map(({ onsetSeconds, afterIndex }) => {
    const before = part.notes[afterIndex];
    const after = part.notes.slice(afterIndex + 1).find((n) => alignment.notes[n.index]!.onsetSeconds !== undefined);
    const from = before === undefined ? undefined : alignment.notes[before.index]!.onsetSeconds;
    if (before === undefined || from === undefined) return placeInScore(part, part.notes[0]!.onsetQuarters);
    const to = after === undefined ? undefined : alignment.notes[after.index]!.onsetSeconds;
    if (after === undefined || to === undefined || to <= from) return placeInScore(part, before.onsetQuarters);
    const share = Math.min(1, Math.max(0, (onsetSeconds - from) / (to - from)));
    const at = before.onsetQuarters + share * (after.onsetQuarters - before.onsetQuarters);
    const end = before.onsetQuarters + before.durationQuarters;
    const rests = after.onsetQuarters > end + 1e-6;
    const inRest = rests && at >= before.onsetQuarters + INTO_REST_SHARE * before.durationQuarters;
    const latest = rests ? after.onsetQuarters - 1e-3 : after.onsetQuarters;
    return placeInScore(part, Math.min(latest, inRest ? Math.max(at, end) : Math.min(at, end - 1e-3)));
  });
}
