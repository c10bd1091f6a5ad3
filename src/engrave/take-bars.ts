import { clipPath, type PathItem } from '../page/index.js';
import { type EngravedPart, STAFF_SPACE } from './engrave-part.js';
import type { LineBar } from './engraved-line.js';
import { openingSigns } from './opening-signs.js';
import type { Shape } from './read-shapes.js';
import { xExtent } from './x-extent.js';

/** White after the signs at the beginning, staff spaces. */
const OPENING_GAP = 0.9;
/** White before what stands first in a bar whose own opening signs were taken away, staff spaces. */
const FIRST_GAP = 0.6;
/** Less of a spanner than this is only its thickness, points. */
const LEAST_SPAN = 0.5;

/** Some bars taken out of a line. Lengths are points; content keeps its places in the line. */
export interface BarsTaken {
  readonly staffSpace: number;
  /** clef and key, from the beginning of the new line */
  readonly opening: readonly Shape[];
  /** where the content begins in the new line */
  readonly openingWidth: number;
  readonly staff: readonly PathItem[];
  /** number of the first bar */
  readonly number: readonly Shape[];
  readonly content: readonly Shape[];
  /** ties, slurs, wedges, brackets, cut off at the ends */
  readonly spanners: readonly { readonly item: PathItem; readonly isLoudness: boolean }[];
  /** where the content begins and ends in the old line */
  readonly left: number;
  readonly right: number;
  /** where each bar ends in the old line */
  readonly ends: readonly number[];
}

/**
 * Takes bars out of a line: clef and key go in front of them, and what reaches over their ends is cut off there, as it is
 * at the end of a printed line.
 *
 * @param part the part laid out
 * @param first 0-based position of the first bar
 * @param last 0-based position of the last bar
 * @returns what belongs to these bars
 *
 * Source: common practice in breaking lines.
 */
export function takeBars(part: EngravedPart, first: number, last: number): BarsTaken {
  const bars = part.bars.slice(first, last + 1);
  const [begin, end] = [bars[0] as LineBar, bars.at(-1) as LineBar];
  const opening = part.openings.findLast(({ fromBar }) => fromBar <= first)?.signs ?? [];
  const own = openingSigns(begin);
  const content = bars.flatMap(({ shapes }) =>
    shapes.filter((shape) => shape.role !== 'staff' && shape.role !== 'number' && !own.includes(shape)),
  );
  const left = own.length === 0 ? begin.left : Math.min(...solidLefts(begin, own)) - FIRST_GAP * STAFF_SPACE;
  const { right } = end;
  return {
    staffSpace: STAFF_SPACE,
    opening,
    openingWidth: Math.max(0, ...opening.map((shape) => xExtent(shape)[1])) + OPENING_GAP * STAFF_SPACE,
    staff: begin.shapes.flatMap(({ role, item }) => (role === 'staff' && item.kind === 'path' ? [item] : [])),
    number: begin.shapes.filter(({ role }) => role === 'number'),
    content,
    spanners: part.spanners.flatMap((spanner) => {
      if (spanner.right < left + LEAST_SPAN || spanner.left > right - LEAST_SPAN) return [];
      const { item, isLoudness } = spanner;
      const path = clipPath(item.path, item.fill !== undefined, left, right);
      return path === null ? [] : [{ item: { ...item, path }, isLoudness }];
    }),
    left,
    right,
    ends: bars.map((bar) => bar.right),
  };
}

function solidLefts({ shapes }: LineBar, without: readonly Shape[]): number[] {
  return shapes.filter((shape) => shape.role === 'solid' && !without.includes(shape)).map((shape) => xExtent(shape)[0]);
}
