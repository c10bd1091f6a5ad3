import type { Item, Point } from '../../../page/index.js';
import type { MarkPlace } from './mark-place.js';
import { arrow, stroke } from './pencil.js';

/** A wave over a note: its turns, and their width and height, points. */
const TURNS = 5;
const TURN_WIDTH = 5;
const TURN_HEIGHT = 2.4;
const CORNERS_A_TURN = 8;
const CRACK = { across: 2.6, up: 3 };
const FALL = { across: 12, down: 6 };
const WEDGE = { across: 2.4, up: 7 };
/** Dashes before a note: how many, how long and how far apart, points. */
const DASHES = { count: 3, length: 3.2, apart: 2.2 };

/**
 * A wavy line over a note that shakes.
 *
 * @param place one line of the excerpt
 * @returns what to draw
 *
 * Source: common practice (a teacher's pencil).
 */
export function waveMarks({ room, finding, headOf }: MarkPlace): Item[] {
  const head = headOf(finding.index);
  if (head === null) return [];
  const width = TURNS * TURN_WIDTH;
  const middle = room.above(head.left - 1, head.left + width + 1, 2 * TURN_HEIGHT + 2) + TURN_HEIGHT + 1;
  const corners = Array.from({ length: TURNS * CORNERS_A_TURN + 1 }, (_, i): Point => {
    const turns = i / CORNERS_A_TURN;
    return [head.left + turns * TURN_WIDTH, middle - TURN_HEIGHT * Math.sin(2 * Math.PI * turns)];
  });
  return [stroke(corners)];
}

/**
 * An arrow that sinks, over the end of a note whose air gives way.
 *
 * @param place one line of the excerpt
 * @returns what to draw
 *
 * Source: common practice (a teacher's pencil).
 */
export function sinkingArrow({ room, finding, headOf }: MarkPlace): Item[] {
  const head = headOf(finding.index);
  if (head === null) return [];
  const left = head.right + 1;
  const top = room.above(left - 1, left + FALL.across + 2, FALL.down + 3) + 1;
  return arrow([left, top], [left + FALL.across, top + FALL.down]);
}

/**
 * A short zigzag over the beginning of a note that cracks.
 *
 * @param place one line of the excerpt
 * @returns what to draw
 *
 * Source: common practice (a teacher's pencil).
 */
export function crackMarks({ room, finding, headOf }: MarkPlace): Item[] {
  const head = headOf(finding.index);
  if (head === null) return [];
  const { across, up } = CRACK;
  const left = head.left - 2 * across;
  const middle = room.above(left - 1, left + 4 * across + 1, 2 * up + 1) + up;
  const corners = [0, 1, 2, 3, 4].map((i): Point => [left + i * across, middle + (i % 2 === 0 ? up : -up)]);
  return [stroke(corners)];
}

/**
 * Dashes that lead to a note that speaks late: the air before it.
 *
 * @param place one line of the excerpt
 * @returns what to draw
 *
 * Source: common practice (a teacher's pencil).
 */
export function airDashes({ room, finding, headOf }: MarkPlace): Item[] {
  const head = headOf(finding.index);
  if (head === null) return [];
  const step = DASHES.length + DASHES.apart;
  const left = head.left - 2 * step;
  const top = room.above(left - 1, left + DASHES.count * step + 1, 3) + 1;
  return Array.from({ length: DASHES.count }, (_, i) =>
    stroke([
      [left + i * step, top],
      [left + i * step + DASHES.length, top],
    ]),
  );
}

/**
 * A wedge that points down at a note that is hit.
 *
 * @param place one line of the excerpt
 * @returns what to draw
 *
 * Source: common practice (a teacher's pencil).
 */
export function wedgeMarks({ room, finding, headOf }: MarkPlace): Item[] {
  const head = headOf(finding.index);
  if (head === null) return [];
  const { across, up } = WEDGE;
  const middle = (head.left + head.right) / 2;
  const top = room.above(middle - across - 1, middle + across + 1, up + 2) + 1;
  return [
    stroke([
      [middle - across, top],
      [middle, top + up],
      [middle + across, top],
    ]),
  ];
}
