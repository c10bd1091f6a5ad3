/** A point of an outline as the font library keeps it, units of the face. */
interface OutlinePoint {
  x: number;
  y: number;
  readonly onCurve: boolean;
  readonly endContour: boolean;
  copy(): OutlinePoint;
}

/** A glyph as it was read: points of its own, or parts that are moved. */
export interface ReadGlyph {
  readonly points?: readonly OutlinePoint[];
  readonly components?: readonly { dx: number; dy: number }[];
}

/** Moves points to where they are at the weight that was chosen. */
export interface Variation {
  transformPoints(glyph: number, points: readonly OutlinePoint[]): void;
}

/** Every glyph has four points more, for its advances. Source: OpenType 1.9, gvar, phantom points. */
const PHANTOM_POINTS = 4;

/**
 * Moves the points of a glyph, or its parts, to their places at a weight.
 *
 * @param glyph as it was read; changed
 * @param id its number
 * @param variation of the face at the weight
 *
 * Source: OpenType 1.9, gvar.
 */
export function varyGlyph(glyph: ReadGlyph, id: number, variation: Variation): void {
  const { points, components } = glyph;
  const own = points ?? components?.map(({ dx, dy }) => pointAt(dx, dy)) ?? [];
  const phantom = Array.from({ length: PHANTOM_POINTS }, () => pointAt(0, 0));
  variation.transformPoints(id, [...own, ...phantom]);
  for (const [i, component] of (components ?? []).entries()) {
    const { x, y } = own[i] as OutlinePoint;
    component.dx = x;
    component.dy = y;
  }
}

function pointAt(x: number, y: number): OutlinePoint {
  return { x, y, onCurve: true, endContour: true, copy: () => pointAt(x, y) };
}
