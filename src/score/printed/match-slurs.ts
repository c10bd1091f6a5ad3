import type { PrintedNote } from './types.js';

/** Slurs that begin and end at a note, by a number that is unique in the part. */
export interface SlurEnds {
  readonly starts: readonly number[];
  readonly stops: readonly number[];
  /** an end without a beginning: a slur that comes over from before a repeat or an ending */
  readonly strayStop: boolean;
}

/** Slurs of the whole part, and the notes whose slur never ends. */
export interface MatchedSlurs {
  readonly byNote: ReadonlyMap<string, SlurEnds>;
  readonly unclosed: readonly PrintedNote[];
}

interface Ends {
  starts: number[];
  stops: number[];
  strayStop: boolean;
}

/**
 * Pairs slur beginnings with ends; of slurs with one number the one opened last ends first.
 *
 * @param line notes of one voice in printed order
 * @returns the pairs by note id, without slurs that never end
 *
 * Source: MusicXML 4.0, `slur` (`number` tells overlapping slurs apart).
 */
export function matchSlurs(line: readonly PrintedNote[]): MatchedSlurs {
  const byNote = new Map<string, Ends>();
  const open = new Map<string, { note: PrintedNote; slur: number }[]>();
  let slurs = 0;
  for (const note of line) {
    if (note.slurs.length === 0) continue;
    const ends: Ends = { starts: [], stops: [], strayStop: false };
    byNote.set(note.id, ends);
    for (const end of note.slurs.filter((s) => s.type === 'stop')) {
      const begun = open.get(end.number)?.pop();
      if (begun === undefined) ends.strayStop = true;
      else {
        ends.stops.push(begun.slur);
        byNote.get(begun.note.id)?.starts.push(begun.slur);
      }
    }
    for (const end of note.slurs.filter((s) => s.type === 'start')) {
      const stack = open.get(end.number) ?? [];
      stack.push({ note, slur: slurs++ });
      open.set(end.number, stack);
    }
  }
  const unclosed = [...open.values()].flatMap((stack) => stack.map(({ note }) => note));
  return { byNote, unclosed: unclosed.sort((a, b) => a.order - b.order) };
}
