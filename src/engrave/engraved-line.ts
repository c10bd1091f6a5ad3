import type { PathItem } from '../page/index.js';
import type { Matrix } from './matrix.js';
import { readSvg } from './read-svg.js';
import { type Piece, svgPieces } from './svg-pieces.js';
import { xExtent } from './x-extent.js';

const UNITS_A_SPACE = 180;

/** One bar where it stands in the line, points. */
export interface LineBar {
  readonly left: number;
  readonly right: number;
  /** all that belongs to this bar alone */
  readonly pieces: readonly Piece[];
}

/** Bars in a line. Lengths are points. */
export interface EngravedLine {
  readonly bars: readonly LineBar[];
  /** what may reach from bar to bar */
  readonly spanners: readonly Spanner[];
}

/** What may reach from bar to bar. */
interface Spanner {
  readonly item: PathItem;
  readonly left: number;
  readonly right: number;
  readonly isLoudness: boolean;
}

/**
 * @param svg the line as the engraver draws it
 * @param staffSpace points a staff space takes
 * @returns its bars; bars that have no staff lines end the line
 *
 * Source: Verovio reference book for its units (180 to a staff space).
 */
export function readLine(svg: string, staffSpace: number): EngravedLine {
  const scale = staffSpace / UNITS_A_SPACE;
  const matrix: Matrix = [scale, 0, 0, scale, 0, 0];
  const { pieces, bars } = svgPieces(readSvg(svg), matrix);
  const ofBars = Array.from({ length: bars }, (): Piece[] => []);
  for (const piece of pieces) if (piece.role !== 'spanner') ofBars[piece.bar]?.push(piece);
  const placed: LineBar[] = [];
  for (const inBar of ofBars) {
    const staff = inBar.find(({ role }) => role === 'staff');
    if (staff === undefined) break;
    const [left, right] = xExtent(staff);
    placed.push({ left, right, pieces: inBar });
  }
  return { bars: withStrays(placed, pieces), spanners: spannersIn(pieces) };
}

function spannersIn(pieces: readonly Piece[]): Spanner[] {
  return pieces.flatMap((piece) => {
    const { item, role, isLoudness } = piece;
    if (role !== 'spanner' || item.kind === 'words') return [];
    const [left, right] = xExtent(piece);
    return [{ item, left, right, isLoudness }];
  });
}

/** Words that stand outside of bars, such as the number of an ending, belong to the bar over which they begin. */
function withStrays(bars: readonly LineBar[], pieces: readonly Piece[]): LineBar[] {
  const strays = pieces.filter(({ bar, role }) => bar < 0 && role !== 'spanner');
  return bars.map((bar) => {
    const mine = strays.filter((piece) => {
      const [x] = xExtent(piece);
      return x >= bar.left && x < bar.right;
    });
    return mine.length === 0 ? bar : { ...bar, pieces: [...bar.pieces, ...mine] };
  });
}
