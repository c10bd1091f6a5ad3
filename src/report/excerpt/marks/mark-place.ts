import type { Excerpt, FreeRoom, Notehead } from '../../../engrave/index.js';
import type { Item } from '../../../page/index.js';
import type { ResultFinding, TakeResult } from '../../../result/index.js';
import type { Part, PerformedBar } from '../../../score/index.js';
import type { ReportSheet } from '../../report-sheet.js';

/** One line of engraved bars and all that a pencil mark in it needs to know. Lengths are points from its top left corner. */
export interface MarkPlace {
  readonly sheet: ReportSheet;
  readonly excerpt: Excerpt;
  /** points a mark may take to the right */
  readonly width: number;
  /** where marks can stand without touching the engraving or each other */
  readonly room: FreeRoom;
  readonly finding: ResultFinding;
  readonly result: TakeResult;
  readonly part: Part;
  /** which line of the excerpt this is, and the performed bars it shows when the finding is about tempo over bars */
  readonly line: { readonly number: number; readonly of: number; readonly bars: readonly PerformedBar[] };
  /** where the head of a note of the part stands in this line, null when it does not */
  readonly headOf: (index: number | undefined) => Notehead | null;
  /** where the note after this one begins: its head, or the next barline */
  readonly endOf: (index: number) => number;
}

/** Draws the marks of one family on one line of an excerpt. */
export type DrawMarks = (place: MarkPlace) => Item[];
