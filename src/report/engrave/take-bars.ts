import type { PathItem } from '../layout/drawing.js';
import { clipPath } from './clip-path.js';
import type { EngravedLine, LineBar } from './engraved-line.js';
import type { Piece } from './svg-pieces.js';
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
  readonly opening: readonly Piece[];
  /** where the content begins in the new line */
  readonly openingWidth: number;
  readonly staff: readonly PathItem[];
  /** number of the first bar */
  readonly number: readonly Piece[];
  readonly content: readonly Piece[];
  /** ties, slurs, wedges, brackets, cut off at the ends */
  readonly spanners: readonly { readonly item: PathItem; readonly isLoudness: boolean }[];
  /** where the content begins and ends in the old line */
  readonly left: number;
  readonly right: number;
}

/**
 * Takes bars out of a line: clef and key go in front of them, and what reaches over their ends is cut off there, as it is
 * at the end of a printed line.
 *
 * @param line the document
 * @param opening bar whose first clef and key hold at the beginning
 * @param first 0-based position of the first bar
 * @param last 0-based position of the last bar
 * @param staffSpace points a staff space takes
 * @returns what belongs to these bars
 *
 * Source: common practice in breaking lines.
 */
export function takeBars(
  line: EngravedLine,
  opening: LineBar,
  first: number,
  last: number,
  staffSpace: number,
): BarsTaken {
  const bars = line.bars.slice(first, last + 1);
  const [begin, end] = [bars[0] as LineBar, bars.at(-1) as LineBar];
  const signs = openingOf(opening);
  const own = openingOf(begin);
  const content = bars.flatMap(({ pieces }) =>
    pieces.filter((piece) => piece.role !== 'staff' && piece.role !== 'number' && !own.includes(piece)),
  );
  const left = own.length === 0 ? begin.left : Math.min(...solidLefts(begin, own)) - FIRST_GAP * staffSpace;
  const { right } = end;
  return {
    opening: signs,
    openingWidth: Math.max(0, ...signs.map(({ item }) => xExtent(item)[1])) + OPENING_GAP * staffSpace,
    staff: begin.pieces.flatMap(({ role, item }) => (role === 'staff' && item.kind === 'path' ? [item] : [])),
    number: begin.pieces.filter(({ role }) => role === 'number'),
    content,
    spanners: line.spanners.flatMap((spanner) => {
      if (spanner.right < left + LEAST_SPAN || spanner.left > right - LEAST_SPAN) return [];
      const item = clipPath(spanner.item, left, right);
      return item === null ? [] : [{ item, isLoudness: spanner.isLoudness }];
    }),
    ...{ left, right, staffSpace },
  };
}

/** Clef and key that stand before everything else in a bar. */
function openingOf({ pieces }: LineBar): readonly Piece[] {
  const start = Math.min(...pieces.filter(isNote).map(({ item }) => xExtent(item)[0]));
  return pieces.filter(({ role, item }) => role === 'opening' && xExtent(item)[0] < start);
}

function solidLefts({ pieces }: LineBar, without: readonly Piece[]): number[] {
  return pieces
    .filter((piece) => piece.role === 'solid' && !without.includes(piece))
    .map(({ item }) => xExtent(item)[0]);
}

/** Notes and rests, but no barlines and no time signatures. */
const isNote = ({ role, sign }: Piece): boolean => role === 'solid' && sign !== null && sign.group !== 'meterSig';
