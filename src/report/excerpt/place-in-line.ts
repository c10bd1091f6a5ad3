import { type Excerpt, FreeRoom, type Notehead } from '../../engrave/index.js';
import type { ReportSheet } from '../report-sheet.js';
import type { MarkPlace } from './marks/mark-place.js';

/**
 * @param sheet for widths
 * @param excerpt one line of engraved bars
 * @param about the finding, its take and part, and points a mark may take to the right
 * @returns all that a mark needs to know of a line, but for the line's place among the others
 */
export function placeInLine(
  sheet: ReportSheet,
  excerpt: Excerpt,
  about: Pick<MarkPlace, 'finding' | 'result' | 'part' | 'width'>,
): Omit<MarkPlace, 'line'> {
  const middle = (excerpt.staff[0] + excerpt.staff[1]) / 2;
  const room = new FreeRoom(sheet.typesetter, excerpt.items, about.width, middle);
  const headOf = (index: number | undefined): Notehead | null => {
    const id = index === undefined ? undefined : about.part.notes[index]?.printedId;
    return id === undefined ? null : (excerpt.noteheads.get(id) ?? null);
  };
  const endOf = (index: number) => endAfter(excerpt, headOf(index), headOf(index + 1));
  return { ...about, sheet, excerpt, room, headOf, endOf };
}

/** Where the next note begins when it is to the right, else the next barline, else the end of the line. */
function endAfter(excerpt: Excerpt, head: Notehead | null, next: Notehead | null): number {
  if (head === null) return excerpt.width;
  const barline = excerpt.barlines.find((x) => x > head.x) ?? excerpt.width;
  return next !== null && next.x > head.x ? next.left : barline;
}
