import type { TakeResult } from '../../result/take-result-schema.js';
import { criterionInWords } from '../../words/finding-words.js';
import { TABLE_WORDS } from '../../words/take/page-words.js';
import type { Sheet } from '../sheet.js';
import { STYLES } from '../styles.js';
import { drawTable } from '../table.js';

/**
 * One line a criterion: how many findings, and what was heard.
 *
 * @param sheet pages being filled
 * @param result the take, reviewed
 *
 * Source: definition.
 */
export function drawCriteriaTable(sheet: Sheet, result: TakeResult): void {
  if (result.criteria.length === 0) return;
  sheet.space(16);
  sheet.ensure(STYLES.section.leading + 60);
  sheet.write('H2', TABLE_WORDS.byCriterion, STYLES.section);
  sheet.write('P', TABLE_WORDS.weights, STYLES.soft);
  sheet.space(4);
  drawTable(
    sheet,
    [
      { head: TABLE_WORDS.criterion, width: 84, namesRow: true },
      { head: TABLE_WORDS.toFix, width: 44, align: 'right' },
      { head: TABLE_WORDS.toWatch, width: 66, align: 'right', gap: 20 },
      { head: TABLE_WORDS.heard, width: sheet.width - 194 + 9 },
    ],
    result.criteria.map(({ criterion, fix, watch, summary }) => [
      { text: criterionInWords(criterion), style: STYLES.cellStrong },
      String(fix),
      String(watch),
      summary.charAt(0).toUpperCase() + summary.slice(1),
    ]),
  );
}
