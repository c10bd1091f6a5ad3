import { type Item, joinPaths, type Path, type PathItem, type Typesetter } from '../page/index.js';
import { closeToStaff } from './close-to-staff.js';
import type { EngravedPart } from './engrave-part.js';
import { FreeRoom } from './free-room.js';
import { lineHeight } from './line-height.js';
import { scaleBars } from './scale-bars.js';
import { shifted } from './shift-items.js';
import { movedShape, type NoteSign, type SpreadBars, spreadBars } from './spread-bars.js';
import { type BarsTaken, takeBars } from './take-bars.js';

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
  /** upper end of all that is drawn in each line */
  readonly tops: readonly number[];
  /** upper and lower line of the first staff */
  readonly staff: readonly [top: number, bottom: number];
  /** where barlines stand, from left to right in each line */
  readonly barlines: readonly number[];
  /** where each bar ends, in order of bars */
  readonly barEnds: readonly number[];
}

/** Engraves printed bars, counted from 0, in a width of so many points; null when that is not possible. */
export type Engrave = (fromBarIndex: number, toBarIndex: number, width: number) => Excerpt | null;

/**
 * Engraves some bars in written pitch.
 *
 * @param part the part laid out
 * @param typesetter widths and coverage of the faces
 * @param fromBarIndex 0-based position of the first printed bar
 * @param toBarIndex 0-based position of the last printed bar
 * @param width points the excerpt may take; it breaks into lines where it is longer, and a bar that is longer still is
 * drawn smaller
 * @returns items, size and the place of every notehead; null when the bars are not there
 *
 * Source: SVG 2; common practice in breaking lines.
 */
export function engraveExcerpt(
  part: EngravedPart,
  typesetter: Typesetter,
  fromBarIndex: number,
  toBarIndex: number,
  width: number,
): Excerpt | null {
  if (fromBarIndex < 0 || toBarIndex < fromBarIndex || toBarIndex >= part.bars.length) return null;
  const systems: System[] = [];
  for (let first = fromBarIndex; first <= toBarIndex; ) {
    const system = longestSystem(part, typesetter, first, toBarIndex, width);
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

/** As many bars as a line holds, one at least; a bar of very many notes is drawn smaller rather than cut. */
function longestSystem(part: EngravedPart, typesetter: Typesetter, first: number, to: number, width: number): System {
  const alone = takeBars(part, first, first);
  const { openingWidth, left } = alone;
  const lengthTo = (bar: number): number => openingWidth + (part.bars[bar]?.right ?? Number.POSITIVE_INFINITY) - left;
  const fits = (bar: number): boolean => lengthTo(bar) <= width + WIDTH_TOLERANCE;
  let last = first;
  while (last < to && fits(last + 1)) last += 1;
  const whole = last === first ? alone : takeBars(part, first, last);
  const taken = fits(last) ? whole : scaleBars(whole, width / lengthTo(last));
  return { first, last, taken, spread: spreadBars(typesetter, taken, width) };
}

function stacked(typesetter: Typesetter, systems: readonly System[], width: number): Excerpt {
  const items: Item[] = [];
  const noteheads = new Map<string, Notehead>();
  const barlines: number[] = [];
  const barEnds: number[] = [];
  const tops: number[] = [];
  let staff: readonly [number, number] = [0, 0];
  let [height, widest] = [0, 0];
  for (const [i, { first, taken, spread }] of systems.entries()) {
    const [top, bottom] = staffOf(taken);
    const room = new FreeRoom(typesetter, spread.items, width, (top + bottom) / 2);
    const more = [
      ...closeToStaff(spread.loudness, room, (top + bottom) / 2),
      ...(first === 0 ? [] : numberOf(typesetter, taken, room)),
    ];
    room.take(more);
    const drawn = [...spread.items, ...more];
    const [from, to] = room.extent;
    const down = height - from + (i > 0 ? BETWEEN_LINES : 0);
    tops.push(from + down);
    items.push(...shifted(gathered(drawn), 0, down));
    for (const [id, signs] of signsOfNotes(spread.signs)) {
      const head = signs.find(({ group }) => group === 'notehead');
      if (head !== undefined) noteheads.set(id, noteheadOf(head, signs, down));
    }
    barlines.push(...spread.barlines);
    barEnds.push(...spread.barEnds);
    if (i === 0) staff = [top + down, bottom + down];
    height = to + down;
    widest = Math.max(widest, spread.width);
  }
  const barsOfSystems = systems.map(({ first, last }) => last - first + 1);
  return { items, width: widest, height, noteheads, barsOfSystems, tops, staff, barlines, barEnds };
}

/** The number of the first bar, centred over the beginning of the line and above its clef. */
function numberOf(typesetter: Typesetter, { number, left }: BarsTaken, room: FreeRoom): Item[] {
  return number.flatMap((shape) =>
    movedShape(typesetter, shape, -left).flatMap((item) => {
      if (item.kind !== 'text') return [];
      const [top] = room.edges(item.x, item.x + NUMBER_REACH);
      return [{ ...item, baseline: Math.min(item.baseline, top - NUMBER_WHITE) }];
    }),
  );
}

function staffOf({ staff }: BarsTaken): readonly [top: number, bottom: number] {
  const heights = staff.map(lineHeight);
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
  const strokes = new Map<number, Path[]>();
  const filled: Path[] = [];
  const others: Item[] = [];
  for (const item of items) {
    if (item.kind === 'text' || item.dash !== undefined) others.push(item);
    else if (item.fill === undefined)
      strokes.set(item.width ?? 0, [...(strokes.get(item.width ?? 0) ?? []), item.path]);
    else if (item.stroke === undefined) filled.push(item.path);
    else others.push(item);
  }
  const lines = [...strokes].map(([width, paths]): PathItem => {
    return { kind: 'path', path: joinPaths(paths), stroke: 'text', width, cap: 'butt' };
  });
  return [
    ...lines,
    ...(filled.length === 0 ? [] : [{ kind: 'path', path: joinPaths(filled), fill: 'text' } as const]),
    ...others,
  ];
}
