import { rememberExcerpts } from '../../engrave/index.js';
import { ReportSheet } from '../report-sheet.js';
import { type LineExtent, layoutData } from './layout-data.js';
import type { LaidOut } from './part-html.js';
import type { RoomPart, RoomTake } from './room-input.js';
import { type RoomLayout, roomLayout } from './room-layout.js';
import type { MarksOfTake } from './take-data.js';
import { type LineMarks, takeMarks } from './take-marks.js';

/** Points a line takes: on a screen as wide as a sheet, and on a telephone. */
const WIDE = 600;
const NARROW = 285;

/** Marks know the lines of a page that has a margin beside them. */
const MARGIN = 104;

/**
 * Lays a part out for screens of both kinds, with the pencil marks of every take that was played from it.
 *
 * @param sheet for widths and words
 * @param roomPart the part
 * @param takes of this part
 * @returns the lines, high enough for the marks of any take, and the marks in the order of the takes
 */
export function layOutPart(
  sheet: ReportSheet,
  { part, engraved }: RoomPart,
  takes: readonly RoomTake[],
): LaidOut & { readonly marks: readonly MarksOfTake[] } {
  const engrave = engraved === null ? null : rememberExcerpts(engraved, sheet.typesetter);
  const inWidth = (width: number) => {
    const { typesetter, language } = sheet;
    const page = new ReportSheet({ typesetter, language, paper: 'a4', width: width + MARGIN, title: '', foot: '' });
    const layout = roomLayout(page, part, engrave, width);
    const marks = takes.map(({ result }) => takeMarks(page, layout, result, part));
    return { layout, marks, data: layoutData(layout, extentsOf(layout, marks), part) };
  };
  const [wide, narrow] = [inWidth(WIDE), inWidth(NARROW)];
  return {
    layouts: { wide: wide.layout, narrow: narrow.layout },
    data: { wide: wide.data, narrow: narrow.data },
    marks: takes.map((_, i) => ({ wide: wide.marks[i] ?? [], narrow: narrow.marks[i] ?? [] })),
  };
}

/** How far each line reaches with the marks of all takes. */
function extentsOf({ lines }: RoomLayout, marks: readonly (readonly LineMarks[])[]): LineExtent[] {
  const all = marks.flat();
  return lines.map(({ excerpt }, i) => {
    const here = all.filter(({ line }) => line === i).map(({ extent }) => extent);
    return [Math.min(0, ...here.map(([top]) => top)), Math.max(excerpt.height, ...here.map(([, bottom]) => bottom))];
  });
}
