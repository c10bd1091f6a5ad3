import { LETTERS_MISSING_NOTE, PANEL_CAUTION, PRACTICE_CAUTION } from '../words/small-print-words.js';
import type { Sheet } from './sheet.js';
import { STYLES } from './styles.js';

/**
 * The cautions at the end of a document.
 *
 * @param sheet pages being filled
 * @param forPlayer true on a page that a player practises from
 *
 * Source: common practice (playing-related strain, hearing and over-breathing: advice given to wind players).
 */
export function drawSmallPrint(sheet: Sheet, forPlayer: boolean): void {
  const texts = [
    ...(forPlayer ? [PRACTICE_CAUTION] : []),
    PANEL_CAUTION,
    ...(sheet.lettersMissing ? [LETTERS_MISSING_NOTE] : []),
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
