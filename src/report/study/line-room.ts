import { type Excerpt, FreeRoom } from '../../engrave/index.js';
import type { Sheet } from '../../page/index.js';

/**
 * @param sheet for widths
 * @param excerpt one line of engraved bars
 * @param width points the line may take
 * @returns where pencil marks can stand beside it
 */
export function lineRoom({ typesetter }: Sheet, { items, staff }: Excerpt, width: number): FreeRoom {
  return new FreeRoom(typesetter, items, width, (staff[0] + staff[1]) / 2);
}
