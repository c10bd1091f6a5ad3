import type { Part, PartNote } from '../score/index.js';
import { accentOf } from './measures/accents.js';
import { isEntry } from './measures/entries.js';
import { findGroups } from './measures/find-groups.js';

/** With fewer notes outside a fermata the tempo of a bar says nothing. */
const LEAST_NOTES_OF_TEMPO = 2;

/** Notes at whose place something is asked for, by their index; more than one where it takes more to play it. */
export interface AskedPlaces {
  readonly groups: readonly (readonly number[])[];
  readonly entries: readonly (readonly number[])[];
  /** one a performed bar whose tempo can be told */
  readonly tempoBars: readonly (readonly number[])[];
  /** slurs and dots, each with the note it leads to */
  readonly slursAndDots: readonly (readonly number[])[];
  readonly accents: readonly (readonly number[])[];
}

/**
 * What a part asks for at which notes, whoever plays it: what a take can leave out.
 *
 * @param part the part
 * @returns the places, in performed order
 */
export function askedPlaces(part: Part): AskedPlaces {
  const notes = part.notes.filter((note) => !note.grace);
  const pairs = notes.slice(1).map((next, k) => [notes[k]!, next] as const);
  return {
    groups: findGroups(part).map(indexes),
    entries: pairs.filter(([note, next]) => isEntry(next, note)).map(([, next]) => [next.index]),
    tempoBars: part.bars
      .map(({ barIndex, pass }) => notes.filter((n) => n.barIndex === barIndex && n.pass === pass && !n.fermata))
      .filter((inBar) => inBar.length >= LEAST_NOTES_OF_TEMPO)
      .map(indexes),
    slursAndDots: pairs.filter(([note]) => asksHowToLeave(note)).map(indexes),
    accents: notes.filter(({ index }) => accentOf(part, index) !== undefined).map(({ index }) => [index]),
  };
}

/**
 * @param note a note of the part
 * @returns whether a slur or a dot says how it goes over into the next
 */
export function asksHowToLeave(note: PartNote): boolean {
  return note.slurredToNext || note.articulations.some((a) => a === 'staccato' || a === 'staccatissimo');
}

function indexes(notes: readonly PartNote[]): number[] {
  return notes.map(({ index }) => index);
}
