import { type Item, lineThrough, mapPoints, type PathItem, type Typesetter } from '../page/index.js';
import { lineHeight } from './line-height.js';
import { placeWords } from './place-words.js';
import type { Shape, Sign } from './read-shapes.js';
import { shifted } from './shift-items.js';
import type { BarsTaken } from './take-bars.js';
import { xExtent } from './x-extent.js';

/** A line that fills less than this share of the width keeps its natural width. */
const SHORTEST_SPREAD = 0.55;
/** White grows by this much of itself at most. */
const MOST_SPREAD = 1.2;
/** A beam may end this far beyond its stem, points. */
const THICKNESS = 0.5;
/** Lines and dots nearer to each other than this are one barline, staff spaces. */
const CLOSE_BARLINES = 1.1;

/** A sign of a note where it came to stand. */
export interface NoteSign extends Sign {
  readonly x: number;
  readonly y: number;
  readonly noteIds: readonly string[];
}

/** Bars as one line of an excerpt. Points from its left end; heights are those of the line they were taken from. */
export interface SpreadBars {
  readonly items: readonly Item[];
  /** marks of loudness and wedges, which lie at one height */
  readonly loudness: readonly Item[];
  readonly signs: readonly NoteSign[];
  readonly barlines: readonly number[];
  /** where each bar ends */
  readonly barEnds: readonly number[];
  readonly width: number;
}

/**
 * Spreads bars to a width: the white between notes grows everywhere in the same ratio, nothing solid changes its form.
 *
 * @param typesetter widths and coverage of the faces
 * @param bars what was taken out of the line
 * @param width points the line should take
 * @returns what to draw
 *
 * Source: common practice in justifying lines.
 */
export function spreadBars(typesetter: Typesetter, bars: BarsTaken, width: number): SpreadBars {
  const { left, right, openingWidth } = bars;
  const natural = openingWidth + right - left;
  const solid = solidStretches(bars);
  const white = whites(left, solid);
  const most = white.reduce((sum, { from, to }) => sum + to - from, 0) * MOST_SPREAD;
  const whole = natural < SHORTEST_SPREAD * width ? natural : Math.min(width, natural + most);
  const shiftAt = shifts(white, openingWidth - left, whole - natural);
  const isSolid = (x: number): boolean => solid.some(([from, to]) => x >= from - THICKNESS && x <= to + THICKNESS);
  const warp = (item: PathItem): PathItem => ({
    ...item,
    path: mapPoints(item.path, (x, y) => [x + shiftAt(x), y]),
  });
  const signs: NoteSign[] = [];
  const barlines: number[] = [];
  const place = (shape: Shape): Item[] => {
    const { item, role, sign, isBarline } = shape;
    const [from, to] = xExtent(shape);
    if (role === 'elastic' && item.kind === 'path') {
      // a short beam at one stem keeps its length
      const isStub = item.fill !== undefined && isSolid(from) !== isSolid(to);
      return isStub ? movedShape(typesetter, shape, shiftAt(isSolid(from) ? from : to)) : [warp(item)];
    }
    const by = shiftAt((from + to) / 2);
    if (sign !== null) signs.push({ ...sign, noteIds: shape.noteIds, x: shape.x + by, y: shape.y });
    if (isBarline) barlines.push((from + to) / 2 + by);
    return movedShape(typesetter, shape, by);
  };
  const content = bars.content.flatMap((shape) => place(shape).map((item) => ({ item, isLoudness: shape.isLoudness })));
  const spanners = bars.spanners.map(({ item, isLoudness }) => ({ item: warp(item), isLoudness }));
  const both = [...content, ...spanners];
  const itemsOf = (loudness: boolean): Item[] =>
    both.filter(({ isLoudness }) => isLoudness === loudness).map(({ item }) => item);
  const staff = bars.staff.map((line): PathItem => {
    const y = lineHeight(line);
    return {
      ...line,
      path: lineThrough([
        [0, y],
        [whole, y],
      ]),
    };
  });
  const opening = bars.opening.flatMap((shape) => movedShape(typesetter, shape, 0));
  const barEnds = bars.ends.map((x) => x + shiftAt(x));
  return {
    items: [...staff, ...opening, ...itemsOf(false)],
    loudness: itemsOf(true),
    signs,
    barlines,
    barEnds,
    width: whole,
  };
}

type Stretch = readonly [from: number, to: number];

/** Where solid things stand, from left to right. A note is one with its stem, its sign and its dots. */
function solidStretches({ content, right, staffSpace }: BarsTaken): Stretch[] {
  const stretches = [...notesAndOthers(content), { ends: [right, right] as Stretch, isBarline: true }];
  const joined: [number, number][] = [];
  let afterBarline = false;
  for (const { ends, isBarline } of stretches.sort((a, b) => a.ends[0] - b.ends[0])) {
    const [from, to] = ends;
    const before = joined.at(-1);
    const close = afterBarline && isBarline ? CLOSE_BARLINES * staffSpace : 0;
    if (before !== undefined && from - before[1] <= close) before[1] = Math.max(before[1], to);
    else joined.push([from, to]);
    afterBarline = isBarline;
  }
  return joined;
}

interface SolidThing {
  readonly ends: Stretch;
  readonly isBarline: boolean;
}

function notesAndOthers(content: readonly Shape[]): SolidThing[] {
  const notes = new Map<string, Stretch>();
  const others: SolidThing[] = [];
  for (const shape of content) {
    const { role, noteIds, isBarline } = shape;
    if (role !== 'solid' && role !== 'opening') continue;
    const [from, to] = xExtent(shape);
    const id = noteIds.at(-1);
    const known = id === undefined ? undefined : notes.get(id);
    if (id === undefined) others.push({ ends: [from, to], isBarline });
    else notes.set(id, [Math.min(from, known?.[0] ?? from), Math.max(to, known?.[1] ?? to)]);
  }
  return [...others, ...[...notes.values()].map((ends) => ({ ends, isBarline: false }))];
}

/** What may grow, from left to right, each with the white before it. */
interface White {
  readonly from: number;
  readonly to: number;
  readonly before: number;
}

function whites(left: number, solid: readonly Stretch[]): White[] {
  const found: White[] = [];
  let [edge, sum] = [left, 0];
  for (const [from, to] of solid) {
    if (from > edge) {
      found.push({ from: edge, to: from, before: sum });
      sum += from - edge;
    }
    edge = Math.max(edge, to);
  }
  return found;
}

/** How far what stands at x moves: with the solid things there, or in the white between them a little further each point. */
function shifts(white: readonly White[], all: number, extra: number): (x: number) => number {
  const last = white.at(-1);
  const sum = last === undefined ? 0 : last.before + last.to - last.from;
  const whiteBefore = (x: number): number => {
    const here = white.findLast(({ from }) => from <= x);
    return here === undefined ? 0 : here.before + Math.min(x, here.to) - here.from;
  };
  return (x) => all + (sum > 0 ? (extra * whiteBefore(x)) / sum : 0);
}

/**
 * @param typesetter widths and coverage of the faces
 * @param shape of an engraving
 * @param by points to the right
 * @returns what to draw
 */
export function movedShape(typesetter: Typesetter, { item, x, y }: Shape, by: number): Item[] {
  return shifted(item.kind === 'path' ? [item] : placeWords(typesetter, item), x + by, y);
}
