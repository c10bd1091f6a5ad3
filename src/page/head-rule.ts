import { lineThrough } from './path.js';
import type { Sheet } from './sheet.js';

/**
 * The rule that closes the head of a document, across the whole width.
 *
 * @param sheet pages being filled, after the lines of the head
 *
 * Source: definition.
 */
export function drawHeadRule(sheet: Sheet): void {
  sheet.y += 7;
  const line = lineThrough([
    [sheet.left, sheet.y],
    [sheet.left + sheet.width, sheet.y],
  ]);
  sheet.furnish([{ kind: 'path', d: line, stroke: 'accent', width: 1 }]);
  sheet.y += 5;
}
