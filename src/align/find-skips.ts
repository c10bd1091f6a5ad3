import type { Part } from '../score/index.js';
import type { AlignedNote, Skip } from './types.js';

/** So many notes left out in a row are a skip even when no whole bar is among them. */
const LEAST_NOTES = 5;

/**
 * Notes left out in a row that make up a whole bar or more were jumped over, not missed one by one.
 *
 * @param part the part
 * @param notes what became of each note
 * @returns skips in order
 */
export function findSkips(part: Part, notes: readonly AlignedNote[]): Skip[] {
  const skips: Skip[] = [];
  let from = -1;
  for (let i = 0; i <= notes.length; i++) {
    const out = notes[i]?.status === 'left-out';
    if (out && from < 0) from = i;
    if (out || from < 0) continue;
    if (i - from >= LEAST_NOTES || holdsWholeBar(part, from, i - 1)) {
      const onset = notes[i]?.onsetSeconds ?? lastOffset(notes, from);
      skips.push({ fromIndex: from, toIndex: i - 1, onsetSeconds: onset });
    }
    from = -1;
  }
  return skips;
}

function lastOffset(notes: readonly AlignedNote[], before: number): number {
  for (let i = before - 1; i >= 0; i--) {
    const offset = notes[i]!.offsetSeconds;
    if (offset !== undefined) return offset;
  }
  return 0;
}

function holdsWholeBar(part: Part, from: number, to: number): boolean {
  if (to - from < 1) return false;
  const begins =
    part.notes[from - 1]?.bar !== part.notes[from]!.bar || part.notes[from - 1]?.pass !== part.notes[from]!.pass;
  for (let i = from; i <= to; i++) {
    const next = part.notes[i + 1];
    const here = part.notes[i]!;
    const ends = next === undefined || next.bar !== here.bar || next.pass !== here.pass;
    if (!ends) continue;
    let first = i;
    while (first > 0 && part.notes[first - 1]!.bar === here.bar && part.notes[first - 1]!.pass === here.pass) first--;
    if (first >= from && (begins || first > from) && i > first) return true;
  }
  return false;
}
