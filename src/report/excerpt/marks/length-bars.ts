import type { Item } from '../../../page/index.js';
import type { MarkPlace } from './mark-place.js';
import { FINE_WIDTH, NOTE_HEIGHT, pencilNote, stroke } from './pencil.js';

const HELD_WIDTH = 2;
const END = 2;
const BETWEEN = 7;
const LEAST_LENGTH = 12;

/**
 * How long a note was held, as a heavy bar above the length it is written, as a fine one with ends. For a fermata both
 * are drawn to the same scale; for a short note the fine bar is its whole time to the next note.
 *
 * @param place one line of the excerpt
 * @returns what to draw
 */
export function lengthBars(place: MarkPlace): Item[] {
  const { sheet, room, finding, excerpt, headOf, endOf } = place;
  const head = headOf(finding.index);
  if (head === null || finding.index === undefined || finding.measured === undefined) return [];
  const ratio = finding.measured.unit === '%' ? finding.measured.value / 100 : finding.measured.value;
  const [held, written] = [pencilNote(sheet, sheet.words.marks.held), pencilNote(sheet, sheet.words.marks.written)];
  const words = Math.max(held.width, written.width) + 4;
  const length = Math.max(LEAST_LENGTH, Math.min(endOf(finding.index) - head.left - 2, excerpt.width / 3 / ratio));
  const longest = Math.max(ratio, 1) * length;
  // at the right end of a line the bars reach back from where the note ends
  const left = Math.max(words, Math.min(head.left, sheet.width - longest - MARGIN_LEFT_TO_TEXT));
  const top = room.above(left - words, left + longest + 2, BETWEEN + NOTE_HEIGHT);
  const [upper, lower] = [top + NOTE_HEIGHT / 2, top + NOTE_HEIGHT / 2 + BETWEEN];
  const bar = (y: number, to: number, width: number): Item =>
    stroke(
      [
        [left, y],
        [to, y],
      ],
      width,
    );
  const end = (x: number): Item =>
    stroke(
      [
        [x, lower - END],
        [x, lower + END],
      ],
      FINE_WIDTH,
    );
  return [
    bar(upper, left + ratio * length, HELD_WIDTH),
    bar(lower, left + length, FINE_WIDTH),
    end(left),
    end(left + length),
    ...held.at(left - held.width - 4, upper - NOTE_HEIGHT / 2),
    ...written.at(left - written.width - 4, lower - NOTE_HEIGHT / 2),
  ];
}

/** Points from the page's text edge to the column of excerpts, which a long bar may use at its right end. */
const MARGIN_LEFT_TO_TEXT = 104;
