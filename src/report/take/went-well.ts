import { STYLES } from '../../page/index.js';
import type { TakeResult } from '../../result/index.js';
import { isOfWholeTake } from '../is-of-whole-take.js';
import { drawEntry } from '../margin-note.js';
import type { ReportSheet } from '../report-sheet.js';

const MOST = 3;

/**
 * Two or three things that went well.
 *
 * @param sheet pages being filled
 * @param result the take, reviewed
 */
export function drawWentWell(sheet: ReportSheet, result: TakeResult): void {
  const praise = result.findings.filter((finding) => finding.weight === 'well').slice(0, MOST);
  if (praise.length === 0) return;
  sheet.space(10);
  sheet.ensure(STYLES.section.leading + 2 * STYLES.body.leading);
  sheet.write('H2', sheet.words.page.wentWell, STYLES.section);
  sheet.space(3);
  for (const finding of praise) {
    drawEntry(sheet, {
      margin: isOfWholeTake(finding) ? sheet.words.page.wholeTake : sheet.words.place(finding),
      paragraphs: [{ tag: 'P', text: finding.text, style: STYLES.body }],
    });
    sheet.space(2.5);
  }
}
