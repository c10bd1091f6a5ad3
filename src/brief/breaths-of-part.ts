import type { Part, PartNote } from '../score/index.js';
import { secondsBetween } from './seconds-between.js';
import type { BreathKind, BriefBreath } from './types.js';

/** A rest at least this long leaves time for a full breath, seconds. Source: quick 0.2–0.5 s, full up to 1 s (from memory). */
const FULL_REST_SECONDS = 0.6;
/** From the end of a note at least this long a full breath can be taken, seconds. Source: working value. */
const LONG_NOTE_SECONDS = 1.2;

/**
 * The breaths that are marked in the part. They are full where the music leaves time (a rest, a fermata, a caesura, the
 * end of a long note) and quick elsewhere.
 *
 * @param part the part, with the tempo asked for
 * @returns breaths in performed order
 *
 * Source: common practice.
 */
export function breathsOfPart(part: Part): BriefBreath[] {
  return part.notes.flatMap((note) => {
    if (note.breathAfter === null) return [];
    const { index, bar, beat, pass } = note;
    return [{ index, bar, beat, pass, kind: breathKind(part, note) }];
  });
}

/**
 * @param part the part, with the tempo asked for
 * @param note the note after which a breath is taken
 * @returns what the music leaves time for
 *
 * Source: common practice.
 */
function breathKind(part: Part, note: PartNote): BreathKind {
  if (note.fermata || note.breathAfter === 'caesura') return 'full';
  const end = note.onsetQuarters + note.durationQuarters;
  const rest = part.notes[note.index + 1]?.restBeforeQuarters ?? Number.POSITIVE_INFINITY;
  if (!Number.isFinite(rest)) return 'full';
  if (secondsBetween(part.tempos, end, end + rest) >= FULL_REST_SECONDS) return 'full';
  return secondsBetween(part.tempos, note.onsetQuarters, end) >= LONG_NOTE_SECONDS ? 'full' : 'quick';
}
