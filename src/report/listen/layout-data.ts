import type { Part } from '../../score/index.js';
import type { LayoutData, LineData } from './room-data.js';
import type { RoomLayout, RoomLine } from './room-layout.js';

/** Points the curves below a line take, and the white above and below them. */
const STRIP_HEIGHT = 40;
const STRIP_GAP = 7;
const BELOW = 3;

/** How far the pencil marks of all takes reach in a line. */
export type LineExtent = readonly [top: number, bottom: number];

/**
 * @param layout the lines
 * @param extents of each line with the pencil marks of all takes, so that nothing moves from take to take
 * @param part the part
 * @returns where lines, bars and notes stand, for the script
 */
export function layoutData({ width, lines }: RoomLayout, extents: readonly LineExtent[], part: Part): LayoutData {
  return {
    lines: lines.map((_, i) => lineData(width, extents[i] as LineExtent)),
    bars: lines.flatMap((line, i) => barsOf(line, i)),
    heads: part.notes.map(({ barIndex, printedId }) => {
      const line = lines.find(({ from, to }) => barIndex >= from && barIndex <= to);
      const x = line?.excerpt.noteheads.get(printedId)?.x;
      return x === undefined ? null : tenth(x);
    }),
  };
}

/** The box of the line's picture, with the strip of curves below the notes. */
function lineData(width: number, [top, bottom]: LineExtent): LineData {
  const stripTop = tenth(bottom + STRIP_GAP);
  const start = tenth(top - 1);
  return {
    width,
    top: start,
    height: tenth(stripTop + STRIP_HEIGHT + BELOW - start),
    stripTop,
    stripHeight: STRIP_HEIGHT,
  };
}

function barsOf({ excerpt }: RoomLine, line: number): LayoutData['bars'] {
  return excerpt.barEnds.map((right, i) => [line, tenth(excerpt.barEnds[i - 1] ?? 0), tenth(right)]);
}

const tenth = (points: number): number => Math.round(points * 10) / 10;
