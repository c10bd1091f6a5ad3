import type { Item, Typesetter } from '../layout/drawing.js';
import type { Matrix } from './matrix.js';
import type { Engraver } from './open-engraver.js';
import { readSvg } from './read-svg.js';
import { type Glyph, scoreIn, svgItems } from './svg-items.js';

/** Points a staff space takes in an excerpt; a staff is four of them. */
const STAFF_SPACE = 4.4;

const UNITS_A_SPACE = 180;
/** White after the last barline, for a breath mark that stands there, points. */
const MARGIN_RIGHT = 4;
/** An excerpt may be this much wider than asked for, points: lines have their thickness. */
const WIDTH_TOLERANCE = 1;
/** Half the width of a notehead in staff spaces. Source: SMuFL 1.4, metadata of Bravura: widths 1.18 and 1.688. */
const HALF_NOTEHEAD = 0.59;
const HALF_WHOLE_NOTEHEAD = 0.844;
const WHOLE_NOTEHEAD = 'E0A2';

/** Where a note's head was drawn, points from the excerpt's top left corner. */
export interface Notehead {
  /** centre of the head */
  readonly x: number;
  readonly y: number;
  /** left edge of the note, its accidental included */
  readonly left: number;
  readonly right: number;
  /** points a staff space at this note; grace notes are smaller */
  readonly space: number;
}

/** Some bars engraved, lengths in points from their top left corner. */
export interface Excerpt {
  readonly items: readonly Item[];
  readonly width: number;
  readonly height: number;
  /** by `printedId` of the note */
  readonly noteheads: ReadonlyMap<string, Notehead>;
  /** bars in each system, from top to bottom */
  readonly barsOfSystems: readonly number[];
  /** upper and lower line of the first staff */
  readonly staff: readonly [top: number, bottom: number];
  /** where barlines stand, from left to right in each system */
  readonly barlines: readonly number[];
}

/** Engraves printed bars, counted from 0, in a width of so many points; null when that is not possible. */
export type Engrave = (fromBarIndex: number, toBarIndex: number, width: number) => Excerpt | null;

/**
 * Engraves some bars in written pitch.
 *
 * @param engraver the opened document
 * @param typesetter widths and coverage of the faces
 * @param fromBarIndex 0-based position of the first printed bar
 * @param toBarIndex 0-based position of the last printed bar
 * @param width points the excerpt may take; it breaks into systems where it is longer, and a bar that is longer still is
 * drawn smaller
 * @returns items, size and the place of every notehead; null when the bars cannot be engraved or are not there
 *
 * Source: SVG 2; Verovio reference book for its units (180 to a staff space).
 */
export function engraveExcerpt(
  engraver: Engraver,
  typesetter: Typesetter,
  fromBarIndex: number,
  toBarIndex: number,
  width: number,
): Excerpt | null {
  const draw = (staffSpace: number): Excerpt | null =>
    drawBars(engraver, typesetter, fromBarIndex, toBarIndex, width, staffSpace);
  const excerpt = draw(STAFF_SPACE);
  // one bar of very many notes is drawn smaller rather than cut
  if (excerpt === null || excerpt.width <= width + WIDTH_TOLERANCE) return excerpt;
  return draw((STAFF_SPACE * width) / (excerpt.width + MARGIN_RIGHT));
}

function drawBars(
  engraver: Engraver,
  typesetter: Typesetter,
  fromBarIndex: number,
  toBarIndex: number,
  width: number,
  staffSpace: number,
): Excerpt | null {
  const scale = staffSpace / UNITS_A_SPACE;
  const svg = engraver.svgOf(fromBarIndex, toBarIndex, width / scale);
  if (svg === null) return null;
  const root = readSvg(svg);
  const box = (scoreIn(root).attributes.viewBox ?? '').split(' ').map(Number);
  const [x = 0, y = 0, unitsWide = Number.NaN, unitsHigh = Number.NaN] = box;
  if (!(unitsWide > 0) || !(unitsHigh > 0)) return null;
  const matrix: Matrix = [scale, 0, 0, scale, -x * scale, -y * scale];
  const drawn = svgItems(typesetter, root, matrix, engraver.printsTime(fromBarIndex));
  const { items, glyphs, barsOfSystems, right, staff, barlines } = drawn;
  if (barsOfSystems.reduce((sum, bars) => sum + bars, 0) !== toBarIndex - fromBarIndex + 1) return null;
  const noteheads = new Map<string, Notehead>();
  for (const [id, signs] of glyphs) {
    const head = signs.find(({ group }) => group === 'notehead');
    if (head !== undefined) noteheads.set(id, noteheadOf(head, signs));
  }
  const wide = Math.min(Math.max(unitsWide * scale, right), right + MARGIN_RIGHT);
  return { items, width: wide, height: unitsHigh * scale, noteheads, barsOfSystems, staff, barlines };
}

function noteheadOf(head: Glyph, signs: readonly Glyph[]): Notehead {
  const half = (head.code === WHOLE_NOTEHEAD ? HALF_WHOLE_NOTEHEAD : HALF_NOTEHEAD) * head.space;
  const accidentals = signs.filter(({ group }) => group === 'accid').map(({ x }) => x);
  return {
    x: head.x + half,
    y: head.y,
    left: Math.min(head.x, ...accidentals),
    right: head.x + 2 * half,
    space: head.space,
  };
}
