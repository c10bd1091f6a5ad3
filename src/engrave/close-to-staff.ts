import { type Bounds, boundsOf, type Item } from '../page/index.js';
import { type FreeRoom, TEXT_REACH } from './free-room.js';
import { shifted } from './shift-items.js';

/** White between notes and marks of loudness, points. */
const WHITE = 3.6;

/**
 * Brings marks of loudness that lie at one height nearer to the staff, all by the same distance: in a long line their
 * height is that of the deepest note of all.
 *
 * @param items marks and wedges
 * @param room what they must not touch
 * @param middle height of the middle of the staff
 * @returns the same, those below the staff moved up and those above it moved down
 *
 * Source: common practice: as near to the staff as the notes allow.
 */
export function closeToStaff(items: readonly Item[], room: FreeRoom, middle: number): Item[] {
  const boxes = items.map((item) => ({ item, ...boxOf(item) }));
  const under = boxes.filter(({ top }) => top >= middle);
  const over = boxes.filter(({ top }) => top < middle);
  const up = Math.min(...under.map(({ left, right, top }) => top - room.edges(left, right)[1] - WHITE));
  const down = Math.min(...over.map(({ left, right, bottom }) => room.edges(left, right)[0] - WHITE - bottom));
  const itemsOf = (some: readonly { readonly item: Item }[]): Item[] => some.map(({ item }) => item);
  return [
    ...shifted(itemsOf(under), 0, -Math.max(0, Number.isFinite(up) ? up : 0)),
    ...shifted(itemsOf(over), 0, Math.max(0, Number.isFinite(down) ? down : 0)),
  ];
}

function boxOf(item: Item): Bounds {
  if (item.kind === 'path') return boundsOf(item.path);
  const { x, baseline, size, text } = item;
  const width = (text.length * size) / 2;
  return {
    left: x,
    right: x + width,
    top: baseline - TEXT_REACH.up * size,
    bottom: baseline + TEXT_REACH.down * size,
  };
}
