import type { Excerpt, Notehead } from '../../engrave/index.js';
import { ellipse, type Item, mapPath, placeText, type Sheet, STYLES, UNMOVED } from '../../page/index.js';
import type { TrapGroup } from './trap-groups.js';

/** Sizes of the rings in staff spaces, from the centre. */
const RING = { across: 1.35, up: 1.2 };
const SIGN_RING = { across: 0.85, up: 1.75 };
/** Middle of an accidental to the right of its left edge, staff spaces. */
const SIGN_MIDDLE = 0.48;
const NUMBER_SIZE = 8;
/** Room for the numbers above an excerpt, points. */
export const NUMBERS_HEIGHT = NUMBER_SIZE + 2;

/**
 * Rings around the notes of a group of traps, numbered when there are several, and dashed rings around the signs that
 * lead astray.
 *
 * @param sheet for widths
 * @param excerpt the engraved bars
 * @param group the traps in them
 * @returns what to draw, points from the excerpt's top left corner; nothing where a note was not engraved
 */
export function pencilMarks(sheet: Sheet, excerpt: Excerpt, group: TrapGroup): Item[] {
  const head = (id: string): Notehead[] => {
    const found = excerpt.noteheads.get(id);
    return found === undefined ? [] : [found];
  };
  const signs = new Set(group.traps.flatMap(({ because }) => (because === null ? [] : [because.printedId])));
  return [
    ...[...signs].flatMap(head).flatMap(signRing),
    ...group.traps.flatMap(({ printedIds }, i) => {
      const notes = printedIds.flatMap(head);
      return [
        ...notes.map(ring),
        ...(group.traps.length > 1 ? notes.flatMap((note) => number(sheet, excerpt, note, i)) : []),
      ];
    }),
  ];
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

/** Above all that is engraved in the line of the note, where it is in nobody's way. */
function number(sheet: Sheet, { tops }: Excerpt, { x, y }: Notehead, position: number): Item[] {
  const top = tops.findLast((line) => line <= y) ?? 0;
  const style = { ...STYLES.axis, face: 'semibold', size: NUMBER_SIZE, leading: NUMBER_SIZE, ink: 'accent' } as const;
  return placeText(sheet.set(String(position + 1), { ...style, align: 'centre' }, 10), x - 5, top - NUMBER_SIZE - 1);
}
