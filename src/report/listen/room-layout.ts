import { type Engrave, type Excerpt, engraveLines } from '../../engrave/index.js';
import { type Item, lineThrough, placeText, STYLES } from '../../page/index.js';
import type { Part } from '../../score/index.js';
import type { ReportSheet } from '../report-sheet.js';

/** Without an engraving, bars are boxes of this size, points. */
const BOX_WIDTH = 74;
const BOX_HEIGHT = 34;
/** The first note of a box stands so far from its left side. */
const BOX_INSET = 8;

/** One line of the part. */
export interface RoomLine {
  readonly excerpt: Excerpt;
  /** printed bars it holds, counted from 0 */
  readonly from: number;
  readonly to: number;
}

/** The whole part broken into lines of a width, points. */
export interface RoomLayout {
  readonly width: number;
  readonly lines: readonly RoomLine[];
}

/**
 * Breaks a part into lines.
 *
 * @param sheet for numbers of boxes
 * @param part the part
 * @param engrave engraves bars of the part; null when it cannot be engraved: then bars are numbered boxes
 * @param width points a line may take
 * @returns the lines, from the first printed bar to the last
 */
export function roomLayout(sheet: ReportSheet, part: Part, engrave: Engrave | null, width: number): RoomLayout {
  const last = part.printedBars - 1;
  const engraved = engrave === null ? [] : engraveLines(engrave, 0, last, width);
  return { width, lines: engraved.length > 0 ? engraved : boxes(sheet, part, width) };
}

function boxes(sheet: ReportSheet, part: Part, width: number): RoomLine[] {
  const aLine = Math.max(1, Math.floor(width / BOX_WIDTH));
  const count = Math.ceil(part.printedBars / aLine);
  return Array.from({ length: count }, (_, line) => {
    const from = line * aLine;
    const to = Math.min(part.printedBars, from + aLine) - 1;
    return { excerpt: boxLine(sheet, part, from, to, width / aLine), from, to };
  });
}

function boxLine(sheet: ReportSheet, part: Part, from: number, to: number, boxWidth: number): Excerpt {
  const bars = Array.from({ length: to - from + 1 }, (_, i) => from + i);
  const numberOf = (barIndex: number) => part.bars.find((bar) => bar.barIndex === barIndex)?.bar ?? `${barIndex + 1}`;
  const items = bars.flatMap((barIndex, i): Item[] => [
    { kind: 'path', path: box(i * boxWidth, boxWidth), stroke: 'rule', width: 0.8 },
    ...placeText(sheet.set(numberOf(barIndex), STYLES.axis, boxWidth), i * boxWidth + 4, 4),
  ]);
  const heads = part.notes.flatMap((note) => {
    const bar = part.bars.find(({ barIndex, pass }) => barIndex === note.barIndex && pass === note.pass);
    if (bar === undefined || note.barIndex < from || note.barIndex > to) return [];
    const share = (note.onsetQuarters - bar.startQuarters) / bar.lengthQuarters;
    const x = (note.barIndex - from) * boxWidth + BOX_INSET + share * (boxWidth - BOX_INSET);
    return [[note.printedId, { x, y: BOX_HEIGHT * 0.7, left: x - 3, right: x + 3, space: 4.4 }] as const];
  });
  const barEnds = bars.map((_, i) => (i + 1) * boxWidth);
  return {
    items,
    width: bars.length * boxWidth,
    height: BOX_HEIGHT,
    noteheads: new Map(heads),
    barsOfSystems: [bars.length],
    tops: [0],
    staff: [0, BOX_HEIGHT],
    barlines: barEnds,
    barEnds,
  };
}

const box = (left: number, width: number) =>
  lineThrough([
    [left, 0],
    [left + width, 0],
    [left + width, BOX_HEIGHT],
    [left, BOX_HEIGHT],
    [left, 0],
  ]);
