import type { ChosenVoice } from '../printed/choose-voice.js';
import type { LineNote } from '../printed/read-line.js';
import { type PrintedBar, type PrintedMark, SAME_PLACE } from '../printed/types.js';
import type { PlayedBar } from './performed-bars.js';
import type { PlayedNote } from './performed-notes.js';

/** A mark on the performed timeline. */
export interface PlayedMark {
  readonly mark: PrintedMark;
  readonly atQuarters: number;
  readonly bar: PlayedBar;
}

/** Marks that are written nearer to a note than this and moved by an offset belong to it, in quarters. */
const NEAR_A_NOTE = 0.25;

/**
 * The marks of each printed bar that concern the player's line, in time order; marks that an offset has moved a little are
 * put back to the note they belong to.
 *
 * @param bars bars as printed
 * @param line notes and rests of each printed bar
 * @param chosen voice and staff that are read
 * @returns marks of each printed bar
 *
 * Source: MusicXML 4.0, `offset`; which note a moved mark belongs to: definition.
 */
export function marksOfLine(
  bars: readonly PrintedBar[],
  line: readonly (readonly LineNote[])[],
  chosen: ChosenVoice,
): PrintedMark[][] {
  const otherVoices = new Set<string>();
  for (const bar of bars) {
    for (const note of bar.notes) {
      if (note.pitch !== null && note.staff === chosen.staff && note.voice !== chosen.voice)
        otherVoices.add(note.voice);
    }
  }
  return bars.map((bar, i) =>
    bar.marks
      .filter((mark) => concerns(mark, chosen, otherVoices))
      .map((mark) => (mark.moved ? { ...mark, at: nearestNote(mark.at, line[i] ?? []) } : mark))
      .sort((a, b) => (Math.abs(a.at - b.at) < SAME_PLACE ? a.order - b.order : a.at - b.at)),
  );
}

function concerns(mark: PrintedMark, chosen: ChosenVoice, otherVoices: ReadonlySet<string>): boolean {
  if (mark.kind === 'metronome' || mark.kind === 'modulation' || mark.kind === 'sound-tempo') return true;
  if (mark.staff !== null && mark.staff !== chosen.staff) return false;
  return mark.voice === null || !otherVoices.has(mark.voice);
}

function nearestNote(at: number, notes: readonly LineNote[]): number {
  let nearest = at;
  let best = NEAR_A_NOTE;
  for (const { printed: note } of notes) {
    const distance = Math.abs(note.at - at);
    if (!note.grace && distance < Math.min(best, note.duration / 2)) {
      best = distance;
      nearest = note.at;
    }
  }
  return nearest;
}

/**
 * @param played bars in performed order
 * @param marks marks of each printed bar
 * @returns the marks in performed order
 */
export function performedMarks(played: readonly PlayedBar[], marks: readonly (readonly PrintedMark[])[]): PlayedMark[] {
  return played.flatMap((bar) =>
    (marks[bar.performed.barIndex] ?? []).map((mark) => ({
      mark,
      atQuarters: bar.performed.startQuarters + mark.at,
      bar,
    })),
  );
}

/**
 * @param notes sounding notes in performed order
 * @param atQuarters a place on the performed timeline
 * @param order document order of the mark at that place; grace notes written before it do not belong to it
 * @returns index of the first note at or after the place, `notes.length` when there is none
 */
export function firstNoteAt(notes: readonly PlayedNote[], atQuarters: number, order: number): number {
  let low = 0;
  let high = notes.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((notes[middle] as PlayedNote).note.onsetQuarters < atQuarters - SAME_PLACE) low = middle + 1;
    else high = middle;
  }
  for (let found = notes[low]; found?.note.grace && found.order < order; found = notes[++low]) {
    if (found.note.onsetQuarters > atQuarters + SAME_PLACE) break;
  }
  return low;
}
