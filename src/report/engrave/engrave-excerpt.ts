import type { Item, PathItem, Typesetter } from '../layout/drawing.js';
import { closeToStaff } from './close-to-staff.js';
import { type EngravedLine, type LineBar, readLine } from './engraved-line.js';
import { FreeRoom } from './free-room.js';
import type { Engraver } from './open-engraver.js';
import { shifted } from './shift-items.js';
import { type NoteSign, type SpreadBars, spreadBars } from './spread-bars.js';
import type { Piece } from './svg-pieces.js';
import { type BarsTaken, takeBars } from './take-bars.js';

/** Points a staff space takes in an excerpt; a staff is four of them. */
const STAFF_SPACE = 4.4;
/** An excerpt may be this much wider than asked for, points: lines have their thickness. */
const WIDTH_TOLERANCE = 1;
/** How far to the right the number of a bar minds what is below it, and the white between both, points. */
const NUMBER_REACH = 12;
const NUMBER_WHITE = 1.5;
/** White between two lines, points. */
const BETWEEN_LINES = 9;
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
  /** bars in each line, from top to bottom */
  readonly barsOfSystems: readonly number[];
  /** upper and lower line of the first staff */
  readonly staff: readonly [top: number, bottom: number];
  /** where barlines stand, from left to right in each line */
  readonly barlines: readonly number[];
}

/** Engraves printed bars, counted from 0, in a width of so many points; null when that is not possible. */
export type Engrave = (fromBarIndex: number, toBarIndex: number, width: number) => Excerpt | null;

/** The document read at the usual size, once for each language: words without a glyph are named in it. */
const lines = new WeakMap<Engraver, Map<string, EngravedLine>>();

/**
 * Engraves some bars in written pitch.
 *
 * @param engraver the opened document
 * @param typesetter widths and coverage of the faces
 * @param fromBarIndex 0-based position of the first printed bar
 * @param toBarIndex 0-based position of the last printed bar
 * @param width points the excerpt may take; it breaks into lines where it is longer, and a bar that is longer still is
 * drawn smaller
 * @returns items, size and the place of every notehead; null when the bars cannot be engraved or are not there
 *
 * Source: SVG 2; common practice in breaking lines.
 */
export function engraveExcerpt(
  engraver: Engraver,
  typesetter: Typesetter,
  fromBarIndex: number,
  toBarIndex: number,
  width: number,
): Excerpt | null {
  const line = lineOf(engraver, typesetter);
  if (fromBarIndex < 0 || toBarIndex < fromBarIndex || toBarIndex >= line.bars.length) return null;
  const systems: System[] = [];
  for (let first = fromBarIndex; first <= toBarIndex; ) {
    const system = longestSystem(engraver, typesetter, line, first, toBarIndex, width);
    if (system === null) return null;
    systems.push(system);
    first = system.last + 1;
  }
  return stacked(typesetter, systems, width);
}

/** One line of an excerpt. */
interface System {
  readonly first: number;
  readonly last: number;
  readonly taken: BarsTaken;
  readonly spread: SpreadBars;
}

function lineOf(engraver: Engraver, typesetter: Typesetter): EngravedLine {
  const known = lines.get(engraver) ?? new Map<string, EngravedLine>();
  lines.set(engraver, known);
  const language = typesetter.language ?? 'en';
  const line = known.get(language) ?? readLine(typesetter, engraver.svg, STAFF_SPACE);
  known.set(language, line);
  return line;
}

/** As many bars as a line holds, one at least. */
function longestSystem(
  engraver: Engraver,
  typesetter: Typesetter,
  line: EngravedLine,
  first: number,
  to: number,
  width: number,
): System | null {
  const opening = openingFor(engraver, typesetter, line, first, STAFF_SPACE);
  if (opening === null) return null;
  const fits = ({ openingWidth, left, right }: BarsTaken): boolean =>
    openingWidth + right - left <= width + WIDTH_TOLERANCE;
  let last = first;
  let taken = takeBars(line, opening, first, first, STAFF_SPACE);
  if (!fits(taken)) return smaller(engraver, typesetter, taken, first, width);
  while (last < to) {
    const longer = takeBars(line, opening, first, last + 1, STAFF_SPACE);
    if (!fits(longer)) break;
    taken = longer;
    last += 1;
  }
  return { first, last, taken, spread: spreadBars(taken, width) };
}

/** One bar of very many notes is drawn smaller rather than cut. */
function smaller(
  engraver: Engraver,
  typesetter: Typesetter,
  { openingWidth, left, right }: BarsTaken,
  bar: number,
  width: number,
): System | null {
  const space = (STAFF_SPACE * width) / (openingWidth + right - left);
  const line = readLine(typesetter, engraver.svg, space);
  const opening = openingFor(engraver, typesetter, line, bar, space);
  if (opening === null) return null;
  const taken = takeBars(line, opening, bar, bar, space);
  return { first: bar, last: bar, taken, spread: spreadBars(taken, width) };
}

/** The bar whose opening signs hold at the beginning of a line: the first of all, unless clef or key change on the way. */
function openingFor(
  engraver: Engraver,
  typesetter: Typesetter,
  { bars }: EngravedLine,
  first: number,
  staffSpace: number,
): LineBar | null {
  const signs = (bar: LineBar | undefined): number => bar?.pieces.filter(isOpening).length ?? 0;
  const changes = bars.slice(1, first + 1).some((bar) => signs(bar) > 0);
  const begin = bars[0] as LineBar;
  if (first === 0 || (!changes && !changesWithin(begin))) return begin;
  const svg = engraver.openingAt(first);
  return svg === null ? null : (readLine(typesetter, svg, staffSpace).bars[0] ?? null);
}

const isOpening = ({ role }: Piece): boolean => role === 'opening';

/** Whether a clef or key stands after the first note. */
function changesWithin({ pieces }: LineBar): boolean {
  const places = pieces.map(({ role, sign }) => (role === 'opening' ? 'o' : sign?.group === 'notehead' ? 'n' : ''));
  return /n.*o/.test(places.join(''));
}

function stacked(typesetter: Typesetter, systems: readonly System[], width: number): Excerpt {
  const items: Item[] = [];
  const noteheads = new Map<string, Notehead>();
  const barlines: number[] = [];
  let staff: readonly [number, number] = [0, 0];
  let [height, widest] = [0, 0];
  for (const [i, { first, taken, spread }] of systems.entries()) {
    const [top, bottom] = staffOf(taken);
    const room = new FreeRoom(typesetter, spread.items, width, (top + bottom) / 2);
    const more = [
      ...closeToStaff(spread.loudness, room, (top + bottom) / 2),
      ...(first === 0 ? [] : numberOf(taken, room)),
    ];
    room.take(more);
    const drawn = [...spread.items, ...more];
    const [from, to] = room.extent;
    const down = height - from + (i > 0 ? BETWEEN_LINES : 0);
    items.push(...shifted(gathered(drawn), 0, down));
    for (const [id, signs] of signsOfNotes(spread.signs)) {
      const head = signs.find(({ group }) => group === 'notehead');
      if (head !== undefined) noteheads.set(id, noteheadOf(head, signs, down));
    }
    barlines.push(...spread.barlines);
    if (i === 0) staff = [top + down, bottom + down];
    height = to + down;
    widest = Math.max(widest, spread.width);
  }
  const barsOfSystems = systems.map(({ first, last }) => last - first + 1);
  return { items, width: widest, height, noteheads, barsOfSystems, staff, barlines };
}

/** The number of the first bar, centred over the beginning of the line and above its clef. */
function numberOf({ number, left }: BarsTaken, room: FreeRoom): Item[] {
  return number.flatMap(({ item, anchor }) => {
    if (item.kind !== 'text') return [];
    const x = item.x - (anchor ?? left);
    const [top] = room.edges(x, x + NUMBER_REACH);
    return [{ ...item, x, baseline: Math.min(item.baseline, top - NUMBER_WHITE) }];
  });
}

function staffOf({ staff }: BarsTaken): readonly [top: number, bottom: number] {
  const heights = staff.map(({ d }) => Number(/^M[-\d.]+ ([-\d.]+)/.exec(d)?.[1] ?? 0));
  return [Math.min(...heights), Math.max(...heights)];
}

function signsOfNotes(signs: readonly NoteSign[]): Map<string, NoteSign[]> {
  const byNote = new Map<string, NoteSign[]>();
  for (const sign of signs) for (const id of sign.noteIds) byNote.set(id, [...(byNote.get(id) ?? []), sign]);
  return byNote;
}

function noteheadOf(head: NoteSign, signs: readonly NoteSign[], down: number): Notehead {
  const half = (head.code === WHOLE_NOTEHEAD ? HALF_WHOLE_NOTEHEAD : HALF_NOTEHEAD) * head.space;
  const accidentals = signs.filter(({ group }) => group === 'accid').map(({ x }) => x);
  return {
    x: head.x + half,
    y: head.y + down,
    left: Math.min(head.x, ...accidentals),
    right: head.x + 2 * half,
    space: head.space,
  };
}

/** Lines of the same width in one item, areas in one, words and dashes after them. */
function gathered(items: readonly Item[]): Item[] {
  const strokes = new Map<number, string[]>();
  const filled: string[] = [];
  const others: Item[] = [];
  for (const item of items) {
    if (item.kind === 'text' || item.dash !== undefined) others.push(item);
    else if (item.fill === undefined) strokes.set(item.width ?? 0, [...(strokes.get(item.width ?? 0) ?? []), item.d]);
    else if (item.stroke === undefined) filled.push(item.d);
    else others.push(item);
  }
  const lines = [...strokes].map(([width, parts]): PathItem => {
    return { kind: 'path', d: parts.join(''), stroke: 'text', width, cap: 'butt' };
  });
  return [
    ...lines,
    ...(filled.length === 0 ? [] : [{ kind: 'path', d: filled.join(''), fill: 'text' } as const]),
    ...others,
  ];
}
