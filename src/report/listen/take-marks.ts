import type { Item } from '../../page/index.js';
import type { ResultFinding, TakeResult } from '../../result/index.js';
import type { Part, PerformedBar } from '../../score/index.js';
import { barsShown } from '../excerpt/marks/bars-shown.js';
import { marksFor } from '../excerpt/marks/marks-for.js';
import { isAboutTempo, tempoBars } from '../excerpt/marks/tempo-bars.js';
import { placeInLine } from '../excerpt/place-in-line.js';
import type { ReportSheet } from '../report-sheet.js';
import type { LineExtent } from './layout-data.js';
import type { RoomLayout, RoomLine } from './room-layout.js';

/** The pencil marks of one take in one line. */
export interface LineMarks {
  readonly line: number;
  readonly items: readonly Item[];
  /** of the line with these marks */
  readonly extent: LineExtent;
}

/**
 * Draws the pencil marks of all findings of a take into the whole part.
 *
 * @param sheet for widths and words
 * @param layout the part in lines
 * @param result the take
 * @param part the part
 * @returns the marks of each line that has some
 */
export function takeMarks(sheet: ReportSheet, layout: RoomLayout, result: TakeResult, part: Part): LineMarks[] {
  const wanted = new Map<number, Wanted[]>();
  for (const finding of result.findings) {
    if (finding.weight === 'well') continue;
    const here = linesOf(finding, layout, part);
    for (const [number, { line, bars }] of here.entries()) {
      wanted.set(line, [...(wanted.get(line) ?? []), { finding, number, of: here.length, bars }]);
    }
  }
  return [...wanted].flatMap(([line, ones]) => {
    const marks = lineMarks(sheet, layout, layout.lines[line] as RoomLine, ones, result, part);
    return marks === null ? [] : [{ line, ...marks }];
  });
}

interface Wanted {
  readonly finding: ResultFinding;
  readonly number: number;
  readonly of: number;
  readonly bars: readonly PerformedBar[];
}

/** The lines in which a finding has something to mark, and the performed bars of one about tempo. */
function linesOf(
  finding: ResultFinding,
  { lines }: RoomLayout,
  part: Part,
): { readonly line: number; readonly bars: readonly PerformedBar[] }[] {
  if (isAboutTempo(finding.kind)) {
    const bars = tempoBars(finding, part).flatMap((stretch) => stretch.bars);
    return lines.flatMap(({ from, to }, line) => {
      const here = bars.filter(({ barIndex }) => barIndex >= from && barIndex <= to);
      return here.length === 0 ? [] : [{ line, bars: here }];
    });
  }
  const shown = barsShown(finding, part);
  if (shown === null) return [];
  return lines.flatMap(({ from, to }, line) => (from <= shown.to && to >= shown.from ? [{ line, bars: [] }] : []));
}

function lineMarks(
  sheet: ReportSheet,
  { width }: RoomLayout,
  { excerpt }: RoomLine,
  wanted: readonly Wanted[],
  result: TakeResult,
  part: Part,
): Omit<LineMarks, 'line'> | null {
  const [first] = wanted;
  if (first === undefined) return null;
  // one room for all, so that no mark stands upon another
  const place = placeInLine(sheet, excerpt, { finding: first.finding, result, part, width });
  const items: Item[] = [];
  for (const { finding, ...line } of wanted) {
    const drawn = marksFor(finding.kind)({ ...place, finding, line });
    place.room.take(drawn);
    items.push(...drawn);
  }
  return items.length === 0 ? null : { items, extent: place.room.extent };
}
