import type { Item } from '../../../page/index.js';
import type { MarkPlace } from './mark-place.js';
import { NOTE_HEIGHT, pencilNote, stroke } from './pencil.js';

/** Opening of a wedge that does not open at all, and what each decibel adds to it, points. */
const CLOSED = 1.6;
const OPENING_A_DECIBEL = 1.15;
const MOST_OPENING = 16;

/**
 * The wedge as it was played, under the one that is written: its opening grows in proportion to the change of level.
 *
 * @param place one line of the excerpt
 * @returns what to draw; on each line the piece of the wedge that belongs there
 */
export function playedWedge(place: MarkPlace): Item[] {
  const { sheet, room, finding, result, excerpt } = place;
  const hairpin = result.hairpins.find(({ index, toIndex }) => index === finding.index && toIndex === finding.toIndex);
  if (hairpin === undefined || typeof hairpin.riseDb !== 'number') return [];
  const indexes = Array.from({ length: hairpin.toIndex - hairpin.index + 1 }, (_, i) => hairpin.index + i);
  const here = indexes.filter((index) => place.headOf(index) !== null);
  const [first, last] = [here[0], here.at(-1)];
  if (first === undefined || last === undefined) return [];
  const share = (index: number) => (index - hairpin.index) / Math.max(1, hairpin.toIndex - hairpin.index);
  const left = place.headOf(first)?.left ?? 0;
  const right = Math.min(excerpt.width, Math.max(left + 12, place.headOf(last)?.right ?? 0));
  const rise = hairpin.riseDb;
  const opening = (at: number) =>
    Math.min(MOST_OPENING, CLOSED + OPENING_A_DECIBEL * Math.max(0, rise > 0 ? rise * at : -rise * (1 - at)));
  const [from, to] = [opening(share(first)), opening(share(last))];
  const note = pencilNote(sheet, sheet.words.marks.played);
  const height = Math.max(from, to, NOTE_HEIGHT);
  const middle = room.below(left - note.width - 5, right + 1, height) + height / 2;
  const side = (up: 1 | -1): Item =>
    stroke([
      [left, middle - (up * from) / 2],
      [right, middle - (up * to) / 2],
    ]);
  return [side(1), side(-1), ...note.at(left - note.width - 4, middle - NOTE_HEIGHT / 2)];
}
