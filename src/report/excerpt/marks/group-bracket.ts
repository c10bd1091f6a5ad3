import type { Item } from '../../../page/index.js';
import type { MarkPlace } from './mark-place.js';
import { FINE_WIDTH, NOTE_HEIGHT, PENCIL_WIDTH, pencilNote, stroke } from './pencil.js';

/** Height of the strokes that divide the brackets, and the distance of the two brackets, points. */
const TICK = 5;
const BETWEEN = 6;
const LEAST_LENGTH = 36;

/**
 * Two brackets over an uneven group: the lower one divided as written, the upper one as played, the divisions joined, so
 * that the eye sees which note took too much.
 *
 * @param place one line of the excerpt
 * @returns what to draw; nothing when the shares of the notes are not known
 *
 * Source: definition: each division at the share of the time before it.
 */
export function groupBracket({ sheet, room, finding, headOf, endOf }: MarkPlace): Item[] {
  const { index, toIndex, measured } = finding;
  const head = headOf(index);
  const { shares, writtenShares } = measured ?? {};
  if (head === null || toIndex === undefined || shares === undefined || writtenShares === undefined) return [];
  const left = head.left;
  const right = Math.max(left + LEAST_LENGTH, endOf(toIndex) - 3);
  const [played, written] = [pencilNote(sheet, sheet.words.marks.played), pencilNote(sheet, sheet.words.marks.written)];
  const words = Math.max(played.width, written.width) + 5;
  const top = room.above(left - words, right + 1, 2 * TICK + BETWEEN);
  const lower = top + TICK + BETWEEN;
  const xAt = (parts: readonly number[]) =>
    [0, ...parts].map((_, i) => {
      const before = parts.slice(0, i).reduce((sum, part) => sum + part, 0);
      return left + (right - left) * Math.min(1, before);
    });
  const [above, below] = [xAt(shares), xAt(writtenShares)];
  return [
    ...bracket(above, top, PENCIL_WIDTH * 1.2),
    ...bracket(below, lower, FINE_WIDTH),
    ...above.map((x, i) =>
      stroke(
        [
          [x, top + TICK],
          [below[i] as number, lower],
        ],
        FINE_WIDTH,
      ),
    ),
    ...played.at(left - played.width - 4, top - NOTE_HEIGHT / 2 + TICK / 2),
    ...written.at(left - written.width - 4, lower - NOTE_HEIGHT / 2 + TICK / 2),
  ];
}

/** A line with a stroke downwards at each division. */
function bracket(xs: readonly number[], top: number, width: number): Item[] {
  const [first, last] = [xs[0] as number, xs.at(-1) as number];
  return [
    stroke(
      [
        [first, top],
        [last, top],
      ],
      width,
    ),
    ...xs.map((x) =>
      stroke(
        [
          [x, top],
          [x, top + TICK],
        ],
        width,
      ),
    ),
  ];
}
