import { lineThrough, type PathItem, type Point, placeText, type Sheet, type TextItem } from '../../../page/index.js';

/** Strokes of a mark. */
export const PENCIL_WIDTH = 1.2;
/** Strokes that only explain. */
export const FINE_WIDTH = 0.5;

const NOTE_SIZE = 8;
const STRONG_SIZE = 8.6;
/** Points a line of words beside a mark takes. */
export const NOTE_HEIGHT = 8.8;

/**
 * @param points corners of a line, points
 * @param width of the line, points
 * @returns the line in the ink of pencil marks
 */
export function stroke(points: readonly Point[], width = PENCIL_WIDTH): PathItem {
  return { kind: 'path', path: lineThrough(points), stroke: 'accent', width };
}

/**
 * @param from where the arrow begins, points
 * @param to its point
 * @param head length of its barbs, points
 * @returns shaft and barbs
 */
export function arrow(from: Point, to: Point, head = 3): PathItem[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const barb = (side: 1 | -1): Point => [to[0] - head * (ux - side * 0.6 * uy), to[1] - head * (uy + side * 0.6 * ux)];
  return [stroke([from, to]), stroke([barb(1), to, barb(-1)])];
}

/** Words beside a mark, set but not yet placed. */
export interface PencilNote {
  readonly width: number;
  /** places the words with their left edge and upper edge at a point */
  readonly at: (x: number, top: number) => TextItem[];
}

/**
 * @param sheet for widths
 * @param text a word or two
 * @param strong in the heavier face
 * @returns the words, ready to be placed
 */
export function pencilNote(sheet: Sheet, text: string, strong = false): PencilNote {
  const face = strong ? 'semibold' : 'italic';
  const set = sheet.set(
    text,
    { face, size: strong ? STRONG_SIZE : NOTE_SIZE, leading: NOTE_HEIGHT, ink: 'accent' },
    Number.POSITIVE_INFINITY,
  );
  const width = set.lines[0]?.width ?? 0;
  return { width, at: (x, top) => placeText({ ...set, width }, x, top) };
}
