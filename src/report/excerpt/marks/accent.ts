import type { Item } from '../../../page/index.js';
import type { MarkPlace } from './mark-place.js';
import { stroke } from './pencil.js';

const ACCENT = { across: 5.5, up: 3 };

/**
 * The accent drawn again, large, over a note on which it could not be heard.
 *
 * @param place one line of the excerpt
 * @returns what to draw
 *
 * Source: common practice (a teacher's pencil).
 */
export function accentMarks({ room, finding, headOf }: MarkPlace): Item[] {
  const head = headOf(finding.index);
  if (head === null) return [];
  const { across, up } = ACCENT;
  const middle = room.above(head.x - across - 1, head.x + across + 1, 2 * up) + up;
  return [
    stroke(
      [
        [head.x - across, middle - up],
        [head.x + across, middle],
        [head.x - across, middle + up],
      ],
      1.5,
    ),
  ];
}
