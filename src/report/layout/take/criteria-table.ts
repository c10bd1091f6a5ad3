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
  const withPoints = result.criteria.some(({ points }) => points !== undefined);
  const points = withPoints
    ? [{ head: TABLE_WORDS.points, width: POINTS_WIDTH, align: 'right' as const, gap: 16 }]
    : [];
  drawTable(
    sheet,
    [
      { head: TABLE_WORDS.criterion, width: 84, namesRow: true },
      { head: TABLE_WORDS.toFix, width: 44, align: 'right' },
      { head: TABLE_WORDS.toWatch, width: 66, align: 'right', gap: 20 },
      ...points,
      { head: TABLE_WORDS.heard, width: sheet.width - 194 + 9 - (withPoints ? POINTS_WIDTH : 0) },
    ],
    result.criteria.map((line) => [
      { text: criterionInWords(line.criterion), style: STYLES.cellStrong },
      line.judged === false ? TABLE_WORDS.notJudged : String(line.fix),
      line.judged === false ? TABLE_WORDS.notJudged : String(line.watch),
      ...(withPoints ? [pointsInWords(line.points)] : []),
      line.summary.charAt(0).toUpperCase() + line.summary.slice(1),
    ]),
  );
  if (withPoints) {
    const given = result.criteria.flatMap(({ points: p }) => (p === undefined || p.given === null ? [] : [p]));
    const sum = (values: readonly number[]) => tenths(values.reduce((total, value) => total + value, 0));
    sheet.space(4);
    const [got, possible] = [sum(given.map((p) => p.given ?? 0)), sum(given.map((p) => p.possible))];
    sheet.write('P', TABLE_WORDS.pointsFormula(got, possible), STYLES.soft);
  }
}

/** Room for “12.5 of 15”. */
const POINTS_WIDTH = 72;

function pointsInWords(points: TakeResult['criteria'][number]['points']): string {
  if (points === undefined) return '';
  const possible = tenths(points.possible);
  return points.given === null ? TABLE_WORDS.noPoints(possible) : TABLE_WORDS.pointsOf(tenths(points.given), possible);
}

const tenths = (value: number) => String(Math.round(10 * value) / 10);
