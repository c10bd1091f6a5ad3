import type { TakeResult } from '../../result/take-result-schema.js';
import { criterionInWords } from '../../words/finding-words.js';
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
  sheet.write('H2', 'By criterion', STYLES.section);
  const note = 'To fix: clear and worth your time. To watch: worth a listen; it may be nothing.';
  sheet.write('P', note, STYLES.soft);
  sheet.space(4);
  drawTable(
    sheet,
    [
      { head: 'Criterion', width: 84, namesRow: true },
      { head: 'To fix', width: 44, align: 'right' },
      { head: 'To watch', width: 66, align: 'right', gap: 20 },
      { head: 'What was heard', width: sheet.width - 194 + 9 },
    ],
    result.criteria.map(({ criterion, fix, watch, summary }) => [
      { text: criterionInWords(criterion), style: STYLES.cellStrong },
      String(fix),
      String(watch),
      summary.charAt(0).toUpperCase() + summary.slice(1),
    ]),
  );
}
