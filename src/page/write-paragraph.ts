import type { TextStyle } from './set-text.js';
import type { Sheet } from './sheet.js';
import { widthWithoutLonelyWord } from './width-without-lonely-word.js';

/**
 * Writes a paragraph over the whole width, so that its last line does not hold one short word alone.
 *
 * @param sheet pages being filled
 * @param text of the paragraph
 * @param style how it is set
 */
export function writeParagraph(sheet: Sheet, text: string, style: TextStyle): void {
  sheet.write('P', text, style, sheet.left, widthWithoutLonelyWord(sheet, text, style, sheet.width));
}
