import { packagesWanting, STYLES } from '../page/index.js';
import type { ReportSheet } from './report-sheet.js';

/** White above the cautions, and below each of them, points. */
const ABOVE = 14;
const BELOW = 3;

/**
 * The cautions at the end of a document.
 *
 * @param sheet pages being filled
 * @param forPlayer true on a page that a player practises from
 * @returns points they take, with the white above them
 *
 * Source: common practice (playing-related strain, hearing and over-breathing: advice given to wind players).
 */
export function drawSmallPrint(sheet: ReportSheet, forPlayer: boolean): number {
  const texts = [
    ...(forPlayer ? [sheet.words.smallPrint.practice, sheet.words.smallPrint.panel] : [sheet.words.smallPrint.teacher]),
    ...(sheet.lettersMissing === ''
      ? []
      : [sheet.words.smallPrint.lettersMissing(packagesWanting(sheet.lettersMissing))]),
  ];
  const sets = texts.map((text) => sheet.set(text, STYLES.small, sheet.width));
  const height = sets.reduce((sum, set) => sum + set.height + BELOW, 0);
  sheet.fillPage();
  sheet.space(ABOVE);
  sheet.ensure(height);
  sheet.y += Math.max(0, sheet.room - height);
  for (const text of texts) {
    sheet.write('P', text, STYLES.small);
    sheet.space(BELOW);
  }
  return ABOVE + height;
}
