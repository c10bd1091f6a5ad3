import type { Part, PartNote } from '../../score/index.js';
import type { GroupMeasure, UnevenCause } from '../types.js';

/** From here on a step is a leap. Source: common practice: wider than a third. */
const LEAP_SEMITONES = 5;

/** A tuplet or a beat by its first and last note. */
type Ends = Pick<GroupMeasure, 'index' | 'toIndex'>;

/**
 * @param part the part
 * @returns what the length of a note of a group may go with, by its index; null where no note comes right after it, so that it
 * has no length of its own
 */
export function causesIn(part: Part): (group: Ends, index: number) => ReadonlySet<UnevenCause> | null {
  const registerOf = registers(part);
  return (group, index) => {
    const [note, next] = [part.notes[index]!, part.notes[index + 1]];
    if (next === undefined || !leadsOn(note, next)) return null;
    const causes = new Set<UnevenCause>();
    if (Math.abs(next.soundingMidi - note.soundingMidi) >= LEAP_SEMITONES) causes.add('leap');
    if (changesArticulation(note, next)) causes.add('articulation');
    if (index === group.index) causes.add('first');
    if (index === group.toIndex) causes.add('last');
    if (registerOf(note) !== registerOf(next)) causes.add('register');
    return causes;
  };
}

/** Whether the next note comes right after this one. */
function leadsOn(note: PartNote, next: PartNote): boolean {
  return !next.grace && next.restBeforeQuarters === 0 && note.breathAfter === null && !note.fermata;
}

/** Whether it is left in another way than it is come to, or marked to be held in another way than the next. */
function changesArticulation(note: PartNote, next: PartNote): boolean {
  const held = ({ articulations }: PartNote): string =>
    articulations.filter((a) => a !== 'accent' && a !== 'strong-accent').join();
  return note.slurredFromPrevious !== note.slurredToNext || held(note) !== held(next);
}

/** In which third of the part's range a note lies, as for intonation. */
function registers({ notes }: Part): (note: PartNote) => number {
  const midis = notes.map((n) => n.writtenMidi);
  const lowest = Math.min(...midis);
  const reach = Math.max(...midis) - lowest + 1;
  return ({ writtenMidi }) => Math.floor((3 * (writtenMidi - lowest)) / reach);
}
