import { type Item, type Point, pointsAlong } from '../../../page/index.js';
import type { MarkPlace } from './mark-place.js';
import { NOTE_HEIGHT, pencilNote, stroke } from './pencil.js';

/** Breath mark of the music face. Source: SMuFL 1.4, Holds and pauses (U+E4CE). */
const COMMA = '\u{E4CE}';
const COMMA_SIZE = 20;
const COMMA_WIDTH = 3.2;
const LANE = 9;
const STROKE = { across: 1.6, up: 4.2, apart: 2.6 };
/** A slur is looked for this far to both sides, points. */
const NEAR = 2.5;

/**
 * A comma in brackets where a breath was heard that is not marked, or is asked for and was not heard.
 *
 * @param place one line of the excerpt
 * @returns what to draw
 *
 * Source: common practice: the comma is the mark of a breath; brackets tell what is added to the print.
 */
export function commaMarks({ sheet, room, finding, headOf, endOf }: MarkPlace): Item[] {
  const head = headOf(finding.index);
  if (head === null || finding.index === undefined) return [];
  const [open, close] = sheet.words.marks.brackets.map((sign) => pencilNote(sheet, sign, true)) as [
    ReturnType<typeof pencilNote>,
    ReturnType<typeof pencilNote>,
  ];
  const inner = COMMA_WIDTH + 3;
  const left = (head.right + endOf(finding.index)) / 2 - inner / 2 - open.width;
  const top = room.above(left, left + open.width + inner + close.width, LANE);
  const x = left + open.width + 1.5;
  return [
    ...open.at(left, top + 0.4),
    { kind: 'text', x, baseline: top + LANE - 1.8, text: COMMA, face: 'music', size: COMMA_SIZE, ink: 'accent' },
    ...close.at(left + open.width + inner, top + 0.4),
  ];
}

/**
 * Two short strokes through a slur where the sound broke off.
 *
 * @param place one line of the excerpt
 * @returns what to draw; above the notes when no slur is drawn there
 *
 * Source: common practice (a teacher's pencil).
 */
export function slurBreak({ sheet, room, finding, excerpt, headOf }: MarkPlace): Item[] {
  const head = headOf(finding.index);
  if (head === null || finding.index === undefined) return [];
  const before = headOf(finding.index - 1);
  const x = before === null ? head.left - 6 : (before.right + head.left) / 2;
  const y = slurAt(excerpt.items, x, head.y) ?? room.above(x - 5, x + 5, 2 * STROKE.up) + STROKE.up;
  const slash = (side: 1 | -1): Item => {
    const middle = x + (side * STROKE.apart) / 2;
    return stroke([
      [middle - STROKE.across, y + STROKE.up],
      [middle + STROKE.across, y - STROKE.up],
    ]);
  };
  const strokes = [slash(-1), slash(1)];
  room.take(strokes);
  const note = pencilNote(sheet, sheet.words.marks.gap);
  const left = x - note.width / 2;
  const over = y <= (excerpt.staff[0] + excerpt.staff[1]) / 2;
  const top = over
    ? room.above(left, left + note.width, NOTE_HEIGHT)
    : room.below(left, left + note.width, NOTE_HEIGHT);
  return [...strokes, ...note.at(left, top)];
}

/** Height of the slur nearest to a note at a place; slurs are the areas that have an outline of their own. */
function slurAt(items: readonly Item[], x: number, nearY: number): number | null {
  const heights = items.flatMap((item) => {
    if (item.kind !== 'path' || item.fill === undefined || item.stroke === undefined) return [];
    const ys = pointsAlong(item.path).flatMap((line) =>
      line.slice(1).flatMap(([x1, y1], i) => {
        const [x0, y0] = line[i] as Point;
        const crosses = Math.min(x0, x1) - NEAR <= x && x <= Math.max(x0, x1) + NEAR;
        const share = x1 === x0 ? 0.5 : Math.min(1, Math.max(0, (x - x0) / (x1 - x0)));
        return crosses ? [y0 + share * (y1 - y0)] : [];
      }),
    );
    return ys.length === 0 ? [] : [ys.reduce((sum, y) => sum + y, 0) / ys.length];
  });
  return heights.toSorted((a, b) => Math.abs(a - nearY) - Math.abs(b - nearY))[0] ?? null;
}
