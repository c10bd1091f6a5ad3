import type { TakeResult } from '../../result/take-result-schema.js';
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
  sheet.write('H2', sheet.words.table.byCriterion, STYLES.section);
  sheet.write('P', sheet.words.table.weights, STYLES.soft);
  sheet.space(4);
  const withPoints = result.criteria.some(({ points }) => points !== undefined);
  const points = withPoints
    ? [{ head: sheet.words.table.points, width: POINTS_WIDTH, align: 'right' as const, gap: 16 }]
    : [];
  drawTable(
    sheet,
    [
      { head: sheet.words.table.criterion, width: 84, namesRow: true },
      { head: sheet.words.table.toFix, width: 44, align: 'right' },
      { head: sheet.words.table.toWatch, width: 66, align: 'right', gap: 20 },
      ...points,
      { head: sheet.words.table.heard, width: sheet.width - 194 + 9 - (withPoints ? POINTS_WIDTH : 0) },
    ],
    result.criteria.map((line) => [
      { text: sheet.words.criterion(line.criterion), style: STYLES.cellStrong },
      line.judged === false ? sheet.words.table.notJudged : String(line.fix),
      line.judged === false ? sheet.words.table.notJudged : String(line.watch),
      ...(withPoints ? [pointsInWords(sheet, line.points)] : []),
      line.summary.charAt(0).toUpperCase() + line.summary.slice(1),
    ]),
  );
  if (withPoints) {
    const given = result.criteria.flatMap(({ points: p }) => (p === undefined || p.given === null ? [] : [p]));
    const sum = (values: readonly number[]) =>
      sheet.words.number(
        values.reduce((total, value) => total + value, 0),
        1,
      );
    sheet.space(4);
    const [got, possible] = [sum(given.map((p) => p.given ?? 0)), sum(given.map((p) => p.possible))];
    sheet.write('P', sheet.words.table.pointsFormula(got, possible), STYLES.soft);
  }
}

/** Room for “12.5 of 15”. */
const POINTS_WIDTH = 72;

function pointsInWords(sheet: Sheet, points: TakeResult['criteria'][number]['points']): string {
  if (points === undefined) return '';
  const { number, table } = sheet.words;
  const possible = number(points.possible, 1);
  return points.given === null ? table.noPoints(possible) : table.pointsOf(number(points.given, 1), possible);
}
