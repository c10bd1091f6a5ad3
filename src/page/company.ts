import type { TextStyle } from './set-text.js';
import type { Sheet } from './sheet.js';

/** A last line shorter than this share of the others is a word left alone. */
const ALONE = 0.16;
/** How much narrower a paragraph may be set to bring the last word company. */
const NARROWEST = 0.82;
const STEP = 0.02;

/**
 * @param sheet for widths
 * @param text of a paragraph
 * @param style how it is set
 * @param width points a line may take
 * @returns the width at which its last line holds more than a lonely word, in no more lines; else the width itself
 *
 * Source: common practice of typography: no paragraph ends in a line of one short word.
 */
export function widthWithCompany(sheet: Sheet, text: string, style: TextStyle, width: number): number {
  const whole = sheet.set(text, style, width).lines;
  const isLonely = (lines: typeof whole) => (lines.at(-1)?.width ?? 0) < ALONE * width;
  if (whole.length < 2 || !isLonely(whole)) return width;
  for (let share = 1 - STEP; share >= NARROWEST; share -= STEP) {
    const { lines } = sheet.set(text, style, share * width);
    if (lines.length > whole.length) return width;
    if (!isLonely(lines)) return share * width;
  }
  return width;
}

/**
 * Writes a paragraph over the whole width, so that its last line does not hold one short word alone.
 *
 * @param sheet pages being filled
 * @param text of the paragraph
 * @param style how it is set
 *
 * Source: definition.
 */
export function writeParagraph(sheet: Sheet, text: string, style: TextStyle): void {
  sheet.write('P', text, style, sheet.left, widthWithCompany(sheet, text, style, sheet.width));
}
