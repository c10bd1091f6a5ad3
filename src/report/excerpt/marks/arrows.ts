import type { Item } from '../../../page/index.js';
import type { MarkPlace } from './mark-place.js';
import { arrow, NOTE_HEIGHT, pencilNote, stroke } from './pencil.js';

const UP_LENGTH = 9;
const LEAST_LENGTH = 7;
const MOST_LENGTH = 34;
const LANE = 8;

/**
 * An arrow above a note that is too high (up) or too low (down), and the words.
 *
 * @param place one line of the excerpt
 * @returns what to draw
 *
 * Source: common practice (a teacher's pencil).
 */
export function pitchArrows({ sheet, room, width, finding, headOf }: MarkPlace): Item[] {
  const head = headOf(finding.index);
  if (head === null || finding.measured === undefined) return [];
  const high = finding.measured.value > 0;
  const note = pencilNote(sheet, high ? sheet.words.marks.tooHigh : sheet.words.marks.tooLow);
  const words = besideOrBefore(head.x + 4, head.x - 4, note.width, width);
  const top = room.above(Math.min(head.x - 3, words), Math.max(head.x + 3, words + note.width), UP_LENGTH);
  const [tail, tip] = high ? [top + UP_LENGTH, top] : [top, top + UP_LENGTH];
  return [...arrow([head.x, tail], [head.x, tip]), ...note.at(words, top + (UP_LENGTH - NOTE_HEIGHT) / 2)];
}

/** Left edge of words to the right of a mark, or to the left of it where the column ends. */
function besideOrBefore(right: number, left: number, words: number, width: number): number {
  return right + words <= width ? right : left - words;
}

/**
 * An arrow from where a note is written to where it came, as long as the wait was in the space of the notes; late to the
 * right, early to the left.
 *
 * @param place one line of the excerpt
 * @returns what to draw
 *
 * Source: common practice (a teacher's pencil).
 */
export function timeArrows(place: MarkPlace): Item[] {
  const { sheet, room, width, finding, part, headOf, endOf } = place;
  const index = lateNote(place);
  const head = headOf(index);
  const partNote = index === undefined ? undefined : part.notes[index];
  if (head === null || partNote === undefined) return [];
  const early = finding.kind === 'early-entry';
  const perQuarter = (endOf(partNote.index) - head.x) / Math.max(0.25, partNote.durationQuarters);
  const quarters = (Math.abs(finding.measured?.value ?? 0) * quarterBpm(place)) / 60;
  const length = Math.min(MOST_LENGTH, Math.max(LEAST_LENGTH, quarters * perQuarter));
  const tip = early ? head.x - length : Math.min(width, head.x + length);
  const note = pencilNote(
    sheet,
    early ? sheet.words.marks.early : finding.kind === 'hesitation' ? sheet.words.marks.waits : sheet.words.marks.late,
  );
  const noteLeft = besideOrBefore((early ? head.x : tip) + 3, (early ? tip : head.x) - 3, note.width, width);
  const top = room.above(Math.min(head.x, tip, noteLeft) - 1, Math.max(tip, noteLeft + note.width) + 1, LANE);
  const middle = top + LANE / 2;
  return [
    stroke([
      [head.x, top],
      [head.x, top + LANE],
    ]),
    ...arrow([head.x, middle], [tip, middle]),
    ...note.at(noteLeft, middle - NOTE_HEIGHT / 2),
  ];
}

/** A wait or a breath is found at the note before it; the note that comes late is the next one. */
function lateNote({ finding: { kind, index } }: MarkPlace): number | undefined {
  return index !== undefined && (kind === 'hesitation' || kind === 'breath-late') ? index + 1 : index;
}

function quarterBpm({ result: { tempo } }: MarkPlace): number {
  return 'notMeasured' in tempo ? 60 : tempo.playedQuarterBpm;
}
