import type { AffineMap, PathItem } from '../page/index.js';
import { readShapes, type Shape } from './read-shapes.js';
import { readSvg } from './read-svg.js';
import { xExtent } from './x-extent.js';

const UNITS_A_SPACE = 180;

/** One bar where it stands in the line, points. */
export interface LineBar {
  readonly left: number;
  readonly right: number;
  /** all that belongs to this bar alone */
  readonly shapes: readonly Shape[];
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
  const toPoints: AffineMap = [scale, 0, 0, scale, 0, 0];
  const { shapes, bars } = readShapes(readSvg(svg), toPoints);
  const ofBars = Array.from({ length: bars }, (): Shape[] => []);
  for (const shape of shapes) if (shape.role !== 'spanner') ofBars[shape.bar]?.push(shape);
  const placed: LineBar[] = [];
  for (const inBar of ofBars) {
    const staff = inBar.find(({ role }) => role === 'staff');
    if (staff === undefined) break;
    const [left, right] = xExtent(staff);
    placed.push({ left, right, shapes: inBar });
  }
  return { bars: withStrays(placed, shapes), spanners: spannersIn(shapes) };
}

function spannersIn(shapes: readonly Shape[]): Spanner[] {
  return shapes.flatMap((shape) => {
    const { item, role, isLoudness } = shape;
    if (role !== 'spanner' || item.kind === 'words') return [];
    const [left, right] = xExtent(shape);
    return [{ item, left, right, isLoudness }];
  });
}

/** Words that stand outside of bars, such as the number of an ending, belong to the bar over which they begin. */
function withStrays(bars: readonly LineBar[], shapes: readonly Shape[]): LineBar[] {
  const strays = shapes.filter(({ bar, role }) => bar < 0 && role !== 'spanner');
  return bars.map((bar) => {
    const mine = strays.filter((shape) => {
      const [x] = xExtent(shape);
      return x >= bar.left && x < bar.right;
    });
    return mine.length === 0 ? bar : { ...bar, shapes: [...bar.shapes, ...mine] };
  });
}
