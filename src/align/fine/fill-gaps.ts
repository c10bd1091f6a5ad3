import type { PartNote } from '../../score/index.js';
import { decodePiece } from './decode-piece.js';
import { lowerBound } from './lower-bound.js';
import type { DecodedSegment, DecodeInput } from './types.js';

/** Of the notes of a gap at least this share must be there, else nothing in it is believed. */
const LEAST_OF_GAP = 0.5;
/** A note is there when this much of its sound has the written pitch, and it lasts so much of its time, at least and at most. */
const LEAST_SHARE = 0.35;
const LEAST_VOICED_SECONDS = 0.03;
const LEAST_OF_TIME = 0.3;
const MOST_OF_TIME = 3;
/** A repeated note is only there when it begins with an attack of its own. */
const OWN_ATTACK = 0.4;
/** Longer gaps are jumps and are left alone. */
const MOST_NOTES = 40;
/** Within a gap the pace may differ so much from that around it. */
const SLOWEST = 1.7;
const QUICKEST = 0.6;
const ATTACK_FRAMES = 4;

/**
 * Looks again at every place where notes of a piece were not found, this time for all of them, before anyone is said to
 * have left them out. What is found so is kept where most of the written pitches are really there.
 *
 * @param input the piece as it was searched
 * @param segments what was found, in order of time
 * @returns the same with gaps filled where the sound speaks for it
 *
 * The search is that of the piece.
 */
export function fillGaps(input: DecodeInput, segments: readonly DecodedSegment[]): DecodedSegment[] {
  const found = segments.filter((s) => s.index !== null);
  if (found.length === 0) return [...segments];
  const filled: DecodedSegment[] = [];
  let from: Anchor | null = null;
  for (const next of [...anchorsOf(input, found), null]) {
    const start = from?.segment.fromFrame ?? 0;
    const end = next?.segment.fromFrame ?? Number.POSITIVE_INFINITY;
    const between = segments.filter((s) => s.fromFrame >= start && s.fromFrame < end);
    const gap = gapBetween(input, from, next, between);
    const won = gap === null ? null : firstOf(ATTEMPTS, (attempt) => fillGap(input, gap, attempt));
    filled.push(...(won ?? between));
    from = next;
  }
  return filled;
}

/** How a gap is looked at again: whether sounds that are in no note are allowed, and whether rough onsets are believed. */
interface Attempt {
  readonly noneAdded: boolean;
  readonly roughKnown: boolean;
}

const ATTEMPTS: readonly Attempt[] = [
  { noneAdded: true, roughKnown: true },
  { noneAdded: false, roughKnown: true },
  { noneAdded: true, roughKnown: false },
];

function firstOf<A, B>(all: readonly A[], make: (one: A) => B | null): B | null {
  for (const one of all) {
    const made = make(one);
    if (made !== null) return made;
  }
  return null;
}

/** A note that was found and stays where it is. */
interface Anchor {
  readonly segment: DecodedSegment;
  /** its place in the piece */
  readonly place: number;
}

/**
 * Notes at their pitch right after a note at its pitch: what follows a gap may have been given the sound of the gap, and
 * what is not at its pitch may be in another note's place.
 */
function anchorsOf(input: DecodeInput, found: readonly DecodedSegment[]): Anchor[] {
  const { notes } = input;
  const placeOf = new Map(notes.map((note, n) => [note.index, n]));
  const all = found.map((segment) => ({ segment, place: placeOf.get(segment.index!)! }));
  const sure = all.map(({ segment, place }) => sounds(input, segment, notes[place]!));
  return all.filter(({ place }, k) =>
    k === 0 ? place === 0 : place === all[k - 1]!.place + 1 && sure[k] === true && sure[k - 1] === true,
  );
}

/** A stretch of a piece in which notes are missing. */
interface Gap {
  readonly from: Anchor | null;
  readonly next: Anchor | null;
  readonly between: readonly DecodedSegment[];
  /** place of its first note in the piece */
  readonly first: number;
  /** its notes, those of both anchors among them */
  readonly notes: readonly PartNote[];
  readonly missing: readonly PartNote[];
}

/** What is missing between two anchors; null where nothing is, or so much that it was jumped over. */
function gapBetween(
  input: DecodeInput,
  from: Anchor | null,
  next: Anchor | null,
  between: readonly DecodedSegment[],
): Gap | null {
  const first = from?.place ?? 0;
  const notes = input.notes.slice(first, (next?.place ?? input.notes.length - 1) + 1);
  const known = new Set(between.map((segment) => segment.index));
  const missing = notes.slice(0, next === null ? undefined : -1).filter((note) => !known.has(note.index));
  if (missing.length === 0 || missing.length > MOST_NOTES) return null;
  return { from, next, between, first, notes, missing };
}

/** The segments from one anchor, which stays where it is, up to the next; null when what was found before is to stay. */
function fillGap(input: DecodeInput, gap: Gap, { noneAdded, roughKnown }: Attempt): DecodedSegment[] | null {
  const { boundaries, hopSeconds } = input;
  const { from, next, between, first, notes, missing } = gap;
  const startSeconds = from === null ? input.startSeconds : from.segment.fromFrame * hopSeconds;
  const endSeconds = next === null ? input.endSeconds : next.segment.fromFrame * hopSeconds;
  const roughOnsets = input.roughOnsets
    .slice(first, first + notes.length)
    .map((t) => (roughKnown && t > startSeconds && t < endSeconds ? t : Number.NaN));
  if (from !== null) roughOnsets[0] = startSeconds;
  if (next !== null) roughOnsets[notes.length - 1] = endSeconds;
  const pace = paceWithin(notes, from !== null && next !== null ? endSeconds - startSeconds : null, input.pace[first]!);
  const segments = decodePiece({
    ...input,
    notes,
    graceAfter: input.graceAfter.slice(first, first + notes.length),
    roughOnsets,
    startSeconds,
    endSeconds: next === null ? input.endSeconds : endSeconds + hopSeconds,
    pace: new Float64Array(notes.length).fill(pace),
    everyNote: {
      first: from === null ? null : lowerBound(boundaries.frame, from.segment.fromFrame),
      last: next === null ? null : lowerBound(boundaries.frame, next.segment.fromFrame),
      noneAdded,
    },
  });
  const within = next === null ? segments : segments.slice(0, -1);
  const wanted = within.filter((segment) => missing.some((note) => note.index === segment.index));
  if (wanted.length < missing.length) return null;
  const there = (segment: DecodedSegment): boolean => {
    const k = notes.findIndex((note) => note.index === segment.index);
    return k > 0 || from === null ? isThere(input, segment, notes[k]!, notes[k - 1], pace) : false;
  };
  const now = within.filter((s) => s.index !== null && there(s)).length;
  const before = between.filter((s) => s.index !== null && there(s)).length;
  const inner = notes.length - (from === null ? 0 : 1) - (next === null ? 0 : 1);
  const won = wanted.filter(there).length;
  if (won < LEAST_OF_GAP * missing.length && (now <= before || now < LEAST_OF_GAP * inner)) return null;
  return within.map((segment, k) => (k === 0 && from !== null ? segment : { ...segment, lookedAtAgain: true }));
}

/** Seconds a quarter in a gap: what its length asks for, as long as that is near the pace around it. */
function paceWithin(notes: readonly PartNote[], seconds: number | null, around: number): number {
  if (seconds === null) return around;
  const pace = seconds / (notes.at(-1)!.onsetQuarters - notes[0]!.onsetQuarters);
  return Math.min(SLOWEST * around, Math.max(QUICKEST * around, pace));
}

function isThere(
  input: DecodeInput,
  segment: DecodedSegment,
  note: PartNote,
  previous: PartNote | undefined,
  pace: number,
): boolean {
  const { boundaries, hopSeconds } = input;
  const { fromFrame, toFrame } = segment;
  const seconds = (toFrame - fromFrame) * hopSeconds;
  const written = note.durationQuarters * pace;
  if (seconds < LEAST_OF_TIME * written || seconds > MOST_OF_TIME * written) return false;
  if (!sounds(input, segment, note)) return false;
  if (previous?.soundingMidi !== note.soundingMidi) return true;
  return boundaries.attack[lowerBound(boundaries.frame, fromFrame)]! >= OWN_ATTACK;
}

/** Whether a stretch sounds at the pitch of the note it was given to. */
function sounds(
  { evidence, offsetSemitones }: DecodeInput,
  { fromFrame, toFrame }: DecodedSegment,
  note: PartNote,
): boolean {
  const a = fromFrame + Math.min(ATTACK_FRAMES, (toFrame - fromFrame) >> 2);
  if (evidence.voicedSeconds(a, toFrame) < LEAST_VOICED_SECONDS) return false;
  return evidence.share(note.soundingMidi + offsetSemitones, a, toFrame) >= LEAST_SHARE;
}
