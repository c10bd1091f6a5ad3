import { packagesWanting, STYLES } from '../page/index.js';
import type { ReportSheet } from './report-sheet.js';

/**
 * The cautions at the end of a document.
 *
 * @param sheet pages being filled
 * @param forPlayer true on a page that a player practises from
 *
 * Source: common practice (playing-related strain, hearing and over-breathing: advice given to wind players).
 */
export function drawSmallPrint(sheet: ReportSheet, forPlayer: boolean): void {
  const texts = [
    ...(forPlayer ? [sheet.words.smallPrint.practice, sheet.words.smallPrint.panel] : [sheet.words.smallPrint.teacher]),
    ...(sheet.lettersMissing === ''
      ? []
      : [sheet.words.smallPrint.lettersMissing(packagesWanting(sheet.lettersMissing))]),
  ];
  const sets = texts.map((text) => sheet.set(text, STYLES.small, sheet.width));
  const height = sets.reduce((sum, set) => sum + set.height + 3, 0);
  sheet.space(14);
  sheet.ensure(height);
  sheet.y += Math.max(0, sheet.room - height);
  for (const text of texts) {
    sheet.write('P', text, STYLES.small);
    sheet.space(3);
  }
}
