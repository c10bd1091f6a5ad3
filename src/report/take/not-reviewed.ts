import { STYLES, writeParagraph } from '../../page/index.js';
import type { TakeResult } from '../../result/index.js';
import type { ReportSheet } from '../report-sheet.js';

/**
 * The page for a take that was not reviewed: says so kindly, and what to try.
 *
 * @param sheet pages being filled
 * @param result the take, its outcome not `reviewed`
 * @param outcome why it was not reviewed
 */
export function drawNotReviewed(
  sheet: ReportSheet,
  result: TakeResult,
  outcome: keyof typeof sheet.words.notReviewed,
): void {
  const words = sheet.words.notReviewed[outcome];
  sheet.space(12);
  sheet.write('H2', words.heading, STYLES.section);
  sheet.space(3);
  writeParagraph(sheet, words.what, STYLES.body);
  sheet.space(12);
  sheet.write('H2', sheet.words.notReviewedHeadings.tries, STYLES.section);
  sheet.space(3);
  for (const text of words.tries) {
    writeParagraph(sheet, text, STYLES.body);
    sheet.space(3);
  }
  if (result.recording.cautions.length === 0) return;
  sheet.space(12);
  sheet.write('H2', sheet.words.notReviewedHeadings.recording, STYLES.section);
  sheet.space(3);
  for (const caution of result.recording.cautions) writeParagraph(sheet, caution, STYLES.body);
}
