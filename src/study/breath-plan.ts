import { type Brief, secondsBetween } from '../brief/index.js';
import type { Part, PartNote } from '../score/index.js';
import type { BreathPlace, LongPhrase } from './types.js';

/** Rests shorter than this are not counted as places to breathe unless a mark says so, seconds. Source: from memory. */
const REST_FOR_BREATH_SECONDS = 0.5;
/** From this long on a rest leaves time for a full breath, seconds. Source: quick 0.2–0.5 s, full up to 1 s (from memory). */
const REST_FOR_FULL_SECONDS = 0.6;
/** What a breath may take from the note before it: at most so long, and at most this share of the note. Source: from memory. */
const TAKEN = { quick: { seconds: 0.3, share: 1 / 3 }, full: { seconds: 0.8, share: 1 / 2 } } as const;
/** After a fermata there is time to breathe calmly, seconds. Source: from memory. */
const AFTER_FERMATA_SECONDS = 1;
/** Longer than this between two breaths is long for a young player, seconds. Source: working value, common practice. */
const LONG_PHRASE_SECONDS = 10;

/** Where to breathe, and what is long in between. */
export interface BreathPlan {
  readonly breaths: readonly BreathPlace[];
  readonly longPhrases: readonly LongPhrase[];
}

/**
 * Breaths as the part or the brief asks for them, and rests that leave time; how long each phrase lasts and how much time
 * each breath has.
 *
 * @param part the part, with the tempo asked for
 * @param brief the teacher's brief
 * @returns breaths in performed order, those of a repeated passage once
 *
 * Source: as at the constants.
 */
export function breathPlan(part: Part, brief: Brief): BreathPlan {
  const kinds = new Map(brief.breaths.map(({ index, kind }) => [index, kind]));
  const seen = new Set<string>();
  const breaths: BreathPlace[] = [];
  const longPhrases: LongPhrase[] = [];
  let start = part.notes[0];
  for (const note of part.notes) {
    const next = part.notes[note.index + 1];
    const place = next === undefined ? null : placeAfter(part, note, next, kinds.get(note.index));
    if (start === undefined || (place === null && next !== undefined)) continue;
    const seconds = secondsBetween(part.tempos, start.onsetQuarters, endOf(note));
    if (seconds > LONG_PHRASE_SECONDS && isNew(seen, `${start.printedId} ${note.printedId}`)) {
      longPhrases.push({ bar: start.bar, toBar: note.bar, seconds });
    }
    if (place !== null && isNew(seen, note.printedId)) breaths.push({ ...place, secondsBefore: seconds });
    start = next;
  }
  return { breaths, longPhrases };
}

function placeAfter(
  part: Part,
  note: PartNote,
  next: PartNote,
  asked: BreathPlace['kind'] | undefined,
): Omit<BreathPlace, 'secondsBefore'> | null {
  const rest = secondsBetween(part.tempos, endOf(note), endOf(note) + next.restBeforeQuarters);
  if (asked === undefined && rest < REST_FOR_BREATH_SECONDS) return null;
  const kind = asked ?? (rest >= REST_FOR_FULL_SECONDS ? 'full' : 'quick');
  const { bar, beat } = note;
  const place = { bar, beat, atQuarters: endOf(note), kind, from: asked === undefined ? 'rest' : 'mark' } as const;
  if (rest > 0.2) return { ...place, secondsAvailable: rest, takenFrom: 'rest' };
  if (note.fermata) return { ...place, secondsAvailable: AFTER_FERMATA_SECONDS, takenFrom: 'fermata' };
  const length = secondsBetween(part.tempos, note.onsetQuarters, endOf(note));
  const { seconds, share } = TAKEN[kind];
  return { ...place, secondsAvailable: Math.min(seconds, share * length), takenFrom: 'end-of-note' };
}

function endOf(note: PartNote): number {
  return note.onsetQuarters + note.durationQuarters;
}

function isNew(seen: Set<string>, key: string): boolean {
  return !seen.has(key) && Boolean(seen.add(key));
}
