import type { Item } from '../../../page/index.js';
import type { MarkPlace } from './mark-place.js';
import { arrow, NOTE_HEIGHT, PENCIL_WIDTH, pencilNote, stroke } from './pencil.js';

const HOOK = 5;

/**
 * An arrow from where the playing stopped back to where it began again.
 *
 * @param place one line of the excerpt
 * @returns what to draw
 *
 * Source: common practice (a teacher's pencil).
 */
export function restartArrow({ sheet, room, width, finding, excerpt, part, headOf }: MarkPlace): Item[] {
  const head = headOf(finding.index);
  const { index, toBar } = finding;
  if (head === null || index === undefined) return [];
  const stopped = part.notes.find((note) => note.index > index && note.bar === (toBar ?? finding.bar));
  const to = Math.min(width, Math.max(head.right + 20, headOf(stopped?.index)?.right ?? excerpt.width));
  const note = pencilNote(sheet, sheet.words.marks.again);
  const words = Math.min(head.left + 6, width - note.width);
  const top = room.above(Math.min(head.left, words) - 1, Math.max(to, words + note.width) + 1, NOTE_HEIGHT + HOOK);
  const y = top + NOTE_HEIGHT + 1;
  return [
    stroke([
      [to, y + HOOK],
      [to, y],
    ]),
    ...arrow([to, y], [head.left, y]),
    ...note.at(words, top),
  ];
}

/**
 * A bracket over what was passed over; open at the end where it goes on beyond this line.
 *
 * @param place one line of the excerpt
 * @returns what to draw
 *
 * Source: common practice (a teacher's pencil).
 */
export function skipBracket({ sheet, room, width, finding, excerpt, headOf }: MarkPlace): Item[] {
  const { index, toIndex } = finding;
  if (index === undefined) return [];
  const indexes = Array.from({ length: (toIndex ?? index) - index + 1 }, (_, i) => index + i);
  const heads = indexes.map((one) => headOf(one));
  const here = heads.filter((head) => head !== null);
  const [first, last] = [here[0], here.at(-1)];
  if (first === undefined || last === undefined) return [];
  const [left, right] = [first.left - 2, heads.at(-1) === null ? excerpt.width : last.right + 2];
  const note = pencilNote(sheet, sheet.words.marks.skipped);
  const words = Math.min(left + 2, width - note.width);
  const top = room.above(Math.min(left, words), Math.max(right, words + note.width), NOTE_HEIGHT + HOOK);
  const y = top + NOTE_HEIGHT + 0.5;
  const hook = (x: number): readonly (readonly [number, number])[] => [[x, y + HOOK]];
  const line = [
    ...(heads[0] === null ? [] : hook(left)),
    [left, y] as const,
    [right, y] as const,
    ...(heads.at(-1) === null ? [] : hook(right)),
  ];
  return [stroke(line, PENCIL_WIDTH), ...(heads[0] === null ? [] : note.at(words, top))];
}
