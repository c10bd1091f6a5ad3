import { LETTERS_MISSING_NOTE, type Sheet } from './sheet.js';
import { STYLES } from './styles.js';

const PRACTICE =
  'Practise with care. Tired lips, fingers and breath need rest before they hurt. Stop when something hurts, when you are dizzy from breathing too much, or when your ears ring after loud playing, and ask your teacher or a doctor.';

const PANEL =
  'These results support a panel; they never replace one. The recording stays on this machine. Your school’s and your country’s rules on keeping recordings of minors apply.';

/**
 * The cautions at the end of a document.
 *
 * @param sheet pages being filled
 * @param forPlayer true on a page that a player practises from
 *
 * Source: common practice (playing-related strain, hearing and over-breathing: advice given to wind players).
 */
export function drawSmallPrint(sheet: Sheet, forPlayer: boolean): void {
  const texts = [...(forPlayer ? [PRACTICE] : []), PANEL, ...(sheet.lettersMissing ? [LETTERS_MISSING_NOTE] : [])];
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
