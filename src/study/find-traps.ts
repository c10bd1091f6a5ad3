import type { Misreading, Part, PartNote } from '../score/index.js';
import { firstPasses } from './first-passes.js';
import { type TrapNote, trapsOf } from './gather-traps.js';
import { likelyKeyTraps } from './likely-key-traps.js';

/**
 * Places where a pitch is easily misread, by the misreadings each note allows. A sign that still holds, has ended, or
 * belongs to another octave always counts; the key signature counts where it is likely to be forgotten; a printed sign
 * counts where nothing else in its bar speaks of it. Each note is named once, for its likeliest misreading.
 *
 * @param part the part
 * @returns traps in the order of the page, equal ones in one bar as one
 *
 * Source: the rule of accidentals, common practice; what is likely: working choice.
 */
export function findTraps(part: Part): ReturnType<typeof trapsOf> {
  const notes = firstPasses(part);
  const keyTraps = likelyKeyTraps(notes);
  const found = notes.flatMap((note, place): TrapNote[] => {
    const misreading = note.misreadings.find((one) => counts(one, note, keyTraps.has(note.index)));
    if (misreading === undefined) return [];
    const because = signBehind(misreading, note, notes, place);
    return [{ note, misreading, because, likely: keyTraps.get(note.index) ?? null }];
  });
  const spokenOf = new Set(found.flatMap(({ because }) => (because === null ? [] : [because.printedId])));
  return trapsOf(
    found.filter(({ misreading, note }) => misreading.kind !== 'accidental-forgotten' || !spokenOf.has(note.printedId)),
  );
}

function counts({ kind }: Misreading, note: PartNote, likelyKey: boolean): boolean {
  if (kind === 'key-signature-forgotten') return likelyKey;
  return kind === 'accidental-forgotten' ? note.printedAccidental !== null : note.printedAccidental === null;
}

/** The earlier note whose sign is carried on, dropped, or taken for another octave. */
function signBehind({ kind }: Misreading, note: PartNote, notes: readonly PartNote[], place: number): PartNote | null {
  if (kind === 'key-signature-forgotten' || kind === 'accidental-forgotten') return null;
  const { step, octave } = note.written;
  for (let i = place - 1; i >= 0; i--) {
    const other = notes[i] as PartNote;
    if (other.barIndex < note.barIndex - 1) return null;
    const inBar = other.barIndex === note.barIndex;
    if (inBar === (kind === 'carried-past-barline') || other.written.step !== step) continue;
    const sameLine = other.written.octave === octave;
    if (sameLine !== (kind === 'wrong-octave-applied') && other.printedAccidental !== null) return other;
  }
  return null;
}
