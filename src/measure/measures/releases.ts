import { median, type NotMeasured, notMeasured } from '../../base/index.js';
import type { Features } from '../../features/index.js';
import type { PartNote } from '../../score/index.js';
import type { NoteContext } from '../context/context.js';
import { isWet } from '../is-wet.js';
import type { RecordingMeasure, ReleaseMeasure } from '../types.js';
import { levelCourse } from './level-course.js';
import { pitchCourse } from './pitch-course.js';

/** What a note is at before it is let go: so long before its end, without the last moments. */
const BODY_SECONDS = 0.4;
const ENDING_SECONDS = 0.2;
const LEAST_SECONDS = 0.5;
/** Silence after it: less is the stroke of a tongue. And its fall is looked for so far beyond the end that was found. */
const LEAST_GAP_SECONDS = 0.08;
const AFTER_SECONDS = 0.4;
/** It is let go between these levels below what it was at. */
const FROM_DB = 3;
const TO_DB = 20;
/** Its pitch is asked for as long as it is so loud. */
const PITCH_DB = 12;
const LEAST_CLARITY = 0.8;
const LEAST_FRAMES = 3;
const FRAME_SECONDS = 0.01;

/**
 * How each note before a silence is let go: how long its tone takes to fall, and where its pitch goes meanwhile.
 *
 * @param context the take with its notes measured
 * @param recording the recording itself: a room that rings, or a recorder that moves its level, hides the end of a note
 * @returns one entry a note that ends in silence, or why there are none
 *
 * Source: fall between two levels by definition. The fall is that of tone and room together: beside the player's own others it
 * is the tone's.
 */
export function measureReleases(context: NoteContext, recording: RecordingMeasure): ReleaseMeasure[] | NotMeasured {
  if (recording.levelRiding) return notMeasured('level-moved');
  if (isWet(recording)) return notMeasured('room-rings');
  return context.part.notes.flatMap((note): ReleaseMeasure[] => {
    const release = releaseOf(context, note);
    return release === null ? [] : [{ index: note.index, bar: note.bar, pass: note.pass, ...release }];
  });
}

function releaseOf(
  { features, alignment }: NoteContext,
  note: PartNote,
): Omit<ReleaseMeasure, 'index' | 'bar' | 'pass'> | null {
  const { onsetSeconds: onset, offsetSeconds: offset, playedMidi, status } = alignment.notes[note.index]!;
  if (onset === undefined || offset === undefined || status !== 'as-written' || note.slurredToNext) return null;
  if (note.grace || note.ornament !== null || offset - onset < LEAST_SECONDS) return null;
  const next = alignment.notes[note.index + 1]?.onsetSeconds ?? features.durationSeconds;
  if (next - offset < LEAST_GAP_SECONDS) return null;
  const bodyDb = median(levelCourse(features, offset - BODY_SECONDS, offset - ENDING_SECONDS).decibels);
  const fall = fallAfter(features, offset - ENDING_SECONDS, Math.min(next, offset + AFTER_SECONDS), bodyDb);
  if (fall === null) return null;
  const midi = playedMidi! + alignment.offsetSemitones;
  const body = pitchCourse(features, midi, offset - BODY_SECONDS, offset - ENDING_SECONDS, LEAST_CLARITY).cents;
  const last = pitchCourse(features, midi, fall.from, fall.softAt, LEAST_CLARITY).cents.slice(-LEAST_FRAMES);
  const heard = body.length >= LEAST_FRAMES && last.length >= LEAST_FRAMES;
  return { fallSeconds: fall.to - fall.from, ...(heard ? { pitchCents: median(last) - median(body) } : {}) };
}

/** The last moment before the tone falls, when it is half gone, and when it is gone; null where it does not fall so far. */
function fallAfter(
  { power, levelHopSeconds: hop }: Features,
  start: number,
  end: number,
  bodyDb: number,
): { readonly from: number; readonly softAt: number; readonly to: number } | null {
  const length = Math.round(FRAME_SECONDS / hop);
  const first = Math.round(start / hop);
  const levels = new Float64Array(Math.max(0, Math.round(end / hop) - first - length));
  for (let i = 0; i < levels.length; i++) {
    let sum = 0;
    for (let k = first + i; k < first + i + length; k++) sum += power[k] ?? 0;
    levels[i] = 10 * Math.log10(sum / length + 1e-12);
  }
  const to = levels.findIndex((db) => db <= bodyDb - TO_DB);
  if (to < 0) return null;
  const from = levels.findLastIndex((db, i) => i < to && db >= bodyDb - FROM_DB);
  const softAt = levels.findLastIndex((db, i) => i < to && db >= bodyDb - PITCH_DB);
  if (from < 0) return null;
  const at = (i: number): number => (first + i + length / 2) * hop;
  return { from: at(from), softAt: at(softAt), to: at(to) };
}
