import { playedName } from '../../../judge/index.js';
import type { Item } from '../../../page/index.js';
import type { MarkPlace } from './mark-place.js';
import { NOTE_HEIGHT, PENCIL_WIDTH, pencilNote, stroke } from './pencil.js';

const CARET = { across: 3.6, up: 6.5 };
const CROSS = 2.6;

/**
 * A caret under a note that was left out.
 *
 * @param place one line of the excerpt
 * @returns what to draw
 *
 * Source: ISO 5776 (proof correction): a caret stands where something is to be put in.
 */
export function caretMarks({ sheet, room, finding, headOf }: MarkPlace): Item[] {
  const head = headOf(finding.index);
  if (head === null) return [];
  const { across, up } = CARET;
  const top = room.below(head.x - across - 1, head.x + across + 1, up);
  const caret = stroke(
    [
      [head.x - across, top + up],
      [head.x, top],
      [head.x + across, top + up],
    ],
    PENCIL_WIDTH * 1.2,
  );
  const note = pencilNote(sheet, sheet.words.marks.leftOut);
  const left = head.x - note.width / 2;
  return [caret, ...note.at(left, room.below(left, left + note.width, NOTE_HEIGHT))];
}

/**
 * A small cross where a note sounded that is not in the part, with its name in written pitch.
 *
 * @param place one line of the excerpt
 * @returns what to draw
 *
 * Source: common practice (a teacher's pencil).
 */
export function crossMarks({ sheet, room, width, finding, result, part, headOf, endOf }: MarkPlace): Item[] {
  const head = headOf(finding.index);
  const near = finding.index === undefined ? undefined : part.notes[finding.index];
  if (head === null || near === undefined) return [];
  const before = result.added.find(({ onset }) => Math.abs(onset - (finding.onset ?? -1)) < 0.001);
  const x = before?.afterIndex === -1 ? head.left - 8 : (head.right + endOf(near.index)) / 2;
  const name =
    before === undefined ? null : playedName(before.midi - near.soundingMidi + near.writtenMidi, near.written);
  const note = pencilNote(sheet, name === null ? '' : sheet.words.marks.sounded(sheet.words.note(name)), true);
  const left = Math.min(x - CROSS, width - note.width - 2 * CROSS - 2);
  const top = room.above(left - 1, left + 2 * CROSS + 2 + note.width, NOTE_HEIGHT);
  const middle = top + NOTE_HEIGHT / 2;
  const slash = (side: 1 | -1): Item =>
    stroke([
      [left, middle - side * CROSS],
      [left + 2 * CROSS, middle + side * CROSS],
    ]);
  return [slash(1), slash(-1), ...(name === null ? [] : note.at(left + 2 * CROSS + 2, top))];
}
