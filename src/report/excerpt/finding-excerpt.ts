import { type Engrave, shifted } from '../../engrave/index.js';
import type { Item } from '../../page/index.js';
import type { ResultFinding, TakeResult } from '../../result/index.js';
import type { Part } from '../../score/index.js';
import type { ReportSheet } from '../report-sheet.js';
import { type ExcerptLine, excerptLines } from './excerpt-lines.js';
import type { BarsShown } from './marks/bars-shown.js';
import type { MarkPlace } from './marks/mark-place.js';
import { marksFor } from './marks/marks-for.js';
import { placeInLine } from './place-in-line.js';

const BETWEEN_LINES = 7;

/** Where a note stands in a picture: its middle, and the ends of the line it stands in. Points. */
export interface NotePlace {
  readonly x: number;
  readonly top: number;
  readonly bottom: number;
}

/** A finding shown in notes. Lengths are points from the upper left corner. */
export interface FindingExcerpt {
  readonly items: readonly Item[];
  readonly width: number;
  readonly height: number;
  /** what the marks mean */
  readonly caption: string;
  /** what stands for the excerpt where it cannot be seen */
  readonly alternative: string;
  /** by `printedId` of the note */
  readonly places: ReadonlyMap<string, NotePlace>;
}

/** What an excerpt is made from. */
export interface ExcerptSource {
  readonly result: TakeResult;
  readonly part: Part;
  /** null when the part cannot be engraved */
  readonly engrave: Engrave | null;
}

/**
 * Engraves the bars of a finding and draws the pencil marks at the very notes.
 *
 * @param sheet for widths
 * @param finding of the take
 * @param source the take, its part and what engraves it
 * @param width points a line may take
 * @returns the excerpt with its marks; null for a finding that is not shown in notes, or whose mark has no place
 */
export function findingExcerpt(
  sheet: ReportSheet,
  finding: ResultFinding,
  { result, part, engrave }: ExcerptSource,
  width: number,
): FindingExcerpt | null {
  const caption = sheet.words.caption(finding.kind);
  if (engrave === null || caption === null) return null;
  const lines = excerptLines(engrave, finding, part, width);
  const items: Item[] = [];
  const places = new Map<string, NotePlace>();
  let [height, widest, marked] = [0, 0, false];
  for (const [number, line] of lines.entries()) {
    const place = placeInLine(sheet, line.excerpt, { finding, result, part, width });
    const drawn = drawLine({ ...place, line: { number, of: lines.length, bars: line.bars } });
    if (height > 0) height += BETWEEN_LINES;
    items.push(...shifted(drawn.items, 0, height - drawn.top));
    const ends = { top: height, bottom: height + drawn.bottom - drawn.top };
    for (const [id, { x }] of line.excerpt.noteheads) places.set(id, { x, ...ends });
    height = ends.bottom;
    widest = Math.max(widest, line.excerpt.width);
    marked ||= drawn.marked;
  }
  if (!marked) return null;
  const numberOf = (barIndex: number) => part.bars.find((bar) => bar.barIndex === barIndex)?.bar ?? `${barIndex + 1}`;
  const named = stretchesOf(lines).map(({ from, to }) => ({ first: numberOf(from), last: numberOf(to) }));
  const alternative = sheet.words.excerpt(named, caption, finding.text);
  return { items, width: widest, height, caption, alternative, places };
}

/** Lines that follow each other in print are one stretch. */
function stretchesOf(lines: readonly ExcerptLine[]): BarsShown[] {
  const stretches: BarsShown[] = [];
  for (const { from, to } of lines) {
    const before = stretches.at(-1);
    if (before !== undefined && before.to + 1 === from) stretches[stretches.length - 1] = { from: before.from, to };
    else stretches.push({ from, to });
  }
  return stretches;
}

function drawLine(place: MarkPlace): {
  readonly items: Item[];
  readonly top: number;
  readonly bottom: number;
  readonly marked: boolean;
} {
  const { room, excerpt, finding } = place;
  const marks = marksFor(finding.kind)(place);
  room.take(marks);
  const [top, bottom] = room.extent;
  return { items: [...excerpt.items, ...marks], top, bottom, marked: marks.length > 0 };
}
