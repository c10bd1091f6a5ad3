import type { Excerpt, FreeRoom, Notehead } from '../../engrave/index.js';
import { ellipse, type Item, mapPath, placeText, type Sheet, STYLES, UNMOVED } from '../../page/index.js';
import type { Trap } from '../../study/index.js';

/** Sizes of the rings in staff spaces, from the centre. */
const RING = { across: 1.35, up: 1.2 };
const SIGN_RING = { across: 0.85, up: 1.75 };
/** Middle of an accidental to the right of its left edge, staff spaces. */
const SIGN_MIDDLE = 0.48;
const NUMBER_SIZE = 8;
const HALF_NUMBER = 5;

/**
 * Rings around the notes of traps, and dashed rings around the accidentals that lead astray.
 *
 * @param excerpt one line of engraved bars
 * @param traps whose notes may stand in it
 * @param room of the line; takes the rings
 * @returns what to draw, points from the excerpt's top left corner; nothing where a note is not in this line
 */
export function trapRings(excerpt: Excerpt, traps: readonly Trap[], room: FreeRoom): Item[] {
  const signs = new Set(traps.flatMap(({ because }) => (because === null ? [] : [because.printedId])));
  const notes = new Set(traps.flatMap(({ printedIds }) => printedIds));
  const rings = [
    ...headsOf(excerpt, [...signs]).flatMap((head) => signRing(head)),
    ...headsOf(excerpt, [...notes]).map((head) => ring(head)),
  ];
  room.take(rings);
  return rings;
}

/**
 * Numbers over ringed notes, each as near to its ring as it can stand.
 *
 * @param sheet for widths
 * @param excerpt one line of engraved bars
 * @param traps in order; a note of the first has the number 1
 * @param room of the line, with the rings; takes the numbers
 * @returns what to draw, points from the excerpt's top left corner
 */
export function trapNumbers(sheet: Sheet, excerpt: Excerpt, traps: readonly Trap[], room: FreeRoom): Item[] {
  const style = { ...STYLES.axis, face: 'semibold', size: NUMBER_SIZE, leading: NUMBER_SIZE, ink: 'accent' } as const;
  return traps.flatMap(({ printedIds }, i) => {
    const set = sheet.set(String(i + 1), { ...style, align: 'centre' }, 2 * HALF_NUMBER);
    return headsOf(excerpt, printedIds).flatMap(({ x }) =>
      placeText(set, x - HALF_NUMBER, room.above(x - HALF_NUMBER / 2, x + HALF_NUMBER / 2, NUMBER_SIZE)),
    );
  });
}

function headsOf({ noteheads }: Excerpt, ids: readonly string[]): Notehead[] {
  return ids.flatMap((id) => noteheads.get(id) ?? []);
}

function ring({ x, y, space }: Notehead): Item {
  const path = mapPath(ellipse(x, y, RING.across * space, RING.up * space), UNMOVED);
  return { kind: 'path', path, stroke: 'accent', width: 1.1 };
}

function signRing({ x, y, left, right, space }: Notehead): Item[] {
  if (left > x - (right - x) - 0.1) return [];
  const middle = left + SIGN_MIDDLE * space;
  const path = mapPath(ellipse(middle, y, SIGN_RING.across * space, SIGN_RING.up * space), UNMOVED);
  return [{ kind: 'path', path, stroke: 'accent', width: 0.8, dash: [1.8, 1.6] }];
}
