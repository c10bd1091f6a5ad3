import type { TextStyle } from './set-text.js';
import type { Sheet } from './sheet.js';

/** A last line shorter than this share of the others is a word left alone. */
const ALONE = 0.16;
/** How narrow a paragraph may be set, so that another word comes down to the last one: shares of its width. */
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
export function widthWithoutLonelyWord(sheet: Sheet, text: string, style: TextStyle, width: number): number {
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
