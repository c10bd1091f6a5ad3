import { lineAcross } from './path/line-across.js';
import type { Sheet } from './sheet.js';

/**
 * The rule that closes the head of a document, across the whole width.
 *
 * @param sheet pages being filled, after the lines of the head
 */
export function drawHeadRule(sheet: Sheet): void {
  sheet.y += 7;
  const path = lineAcross(sheet.y, sheet.left, sheet.left + sheet.width);
  sheet.furnish([{ kind: 'path', path, stroke: 'accent', width: 1 }]);
  sheet.y += 5;
}
