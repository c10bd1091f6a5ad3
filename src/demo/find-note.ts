import type { Part, PartNote } from '../score/index.js';
import type { NoteAddress } from './types.js';

/**
 * @param part the part
 * @param address index, or bar and beat
 * @returns the note there
 * @throws Error when there is none: the plan does not belong to this part
 */
export function findNote(part: Part, address: NoteAddress): PartNote {
  const found =
    typeof address === 'number'
      ? part.notes[address]
      : part.notes.find((note) => note.bar === address.bar && Math.abs(note.beat - address.beat) < 0.01 && !note.grace);
  if (!found) throw new Error(`the part has no note at ${JSON.stringify(address)}`);
  return found;
}
