import type { NoteContext } from '../context/context.js';
import { firstHeard } from './first-heard.js';

/** A start is looked for so long before a note's onset, and its speaking so long after it. */
const BEFORE_SECONDS = 0.25;
const AFTER_SECONDS = 0.3;
/** Shorter notes have no steady level to come to. */
const LEAST_SECONDS = 0.2;

/** The sound before must have fallen so far below a note, or what sounds at its beginning may be both together. */
const VALLEY_DB = 14;

/** The beginning of one note; times in seconds from the first sample. */
export interface StartOfNote {
  readonly index: number;
  /** how far the sound before has fallen below its level */
  readonly fallenDb: number;
  /** when it is first heard */
  readonly from: number;
  /** up to where it may come to its pitch and level */
  readonly until: number;
  readonly offset: number;
  /** as it sounds, without tuning */
  readonly midi: number;
  /** level of its held part, dBFS */
  readonly steadyDb: number;
  /** when it is near its level */
  readonly atLevel: number;
}

/**
 * @param context the take with its notes measured
 * @returns the beginnings of notes begun with the tongue, in order; of none that was not played, is short, has no level, or follows
 * a sound that goes on
 */
export function startsOfNotes(context: NoteContext): StartOfNote[] {
  return context.part.notes.flatMap((note) => {
    const start = note.grace || note.slurredFromPrevious ? null : startOf(context, note.index);
    return start === null ? [] : [start];
  });
}

function startOf(context: NoteContext, index: number): StartOfNote | null {
  const { features, alignment, notes } = context;
  const { onsetSeconds: onset, offsetSeconds: offset, playedMidi } = alignment.notes[index]!;
  const steadyDb = notes[index]!.levelDb;
  if (onset === undefined || offset === undefined || typeof steadyDb !== 'number') return null;
  if (offset - onset < LEAST_SECONDS) return null;
  const before = Math.max(alignment.notes[index - 1]?.offsetSeconds ?? 0, onset - BEFORE_SECONDS);
  const until = Math.min(offset, onset + AFTER_SECONDS);
  const found = firstHeard(features, before, onset, until, steadyDb, VALLEY_DB);
  if (found === null) return null;
  const midi = playedMidi! + alignment.offsetSemitones;
  return {
    ...{ index, from: found.heard, until, offset, midi, steadyDb },
    ...{ atLevel: found.atLevel, fallenDb: found.fallenDb },
  };
}
