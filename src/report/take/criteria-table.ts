import { type Cell, type Column, drawTable, STYLES, tableHeight } from '../../page/index.js';
import type { TakeResult } from '../../result/index.js';
import type { ReportSheet } from '../report-sheet.js';

/**
 * One line a criterion: how many findings, and what was heard.
 *
 * @param sheet pages being filled
 * @param result the take, reviewed
 */
export function drawCriteriaTable(sheet: ReportSheet, result: TakeResult): void {
  if (result.criteria.length === 0) return;
  const withPoints = result.criteria.some(({ points }) => points !== undefined);
  const [columns, rows] = [columnsOf(sheet, withPoints), rowsOf(sheet, result, withPoints)];
  // in one piece, so that a take can be seen in one look
  const height = STYLES.section.leading + STYLES.soft.leading + 4 + tableHeight(sheet, columns, rows);
  sheet.space(16);
  sheet.ensure(Math.min(height, sheet.fullHeight));
  sheet.write('H2', sheet.words.table.byCriterion, STYLES.section);
  sheet.write('P', sheet.words.table.weights, STYLES.soft);
  sheet.space(4);
  drawTable(sheet, columns, rows);
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

function columnsOf(sheet: ReportSheet, withPoints: boolean): Column[] {
  const { table } = sheet.words;
  const points: Column[] = withPoints ? [{ head: table.points, width: POINTS_WIDTH, align: 'right', gap: 16 }] : [];
  return [
    { head: table.criterion, width: 84, namesRow: true },
    { head: table.toFix, width: 44, align: 'right' },
    { head: table.toWatch, width: 66, align: 'right', gap: 20 },
    ...points,
    { head: table.heard, width: sheet.width - 194 + 9 - (withPoints ? POINTS_WIDTH : 0) },
  ];
}

function rowsOf(sheet: ReportSheet, result: TakeResult, withPoints: boolean): Cell[][] {
  const { table } = sheet.words;
  return result.criteria.map((line) => [
    { text: sheet.words.criterion(line.criterion), style: STYLES.cellStrong },
    line.judged === false ? unjudged(sheet, line) : String(line.fix),
    line.judged === false ? table.notJudged : String(line.watch),
    ...(withPoints ? [pointsInWords(sheet, line.points)] : []),
    line.summary.charAt(0).toUpperCase() + line.summary.slice(1),
  ]);
}

/** Nothing to count: not played, or not judged. */
function unjudged(
  { words: { table } }: ReportSheet,
  { of = 0, notPlayed = 0 }: TakeResult['criteria'][number],
): string {
  return of > 0 && notPlayed === of ? table.notPlayed : table.notJudged;
}

/** Room for “12.5 of 15”. */
const POINTS_WIDTH = 72;

function pointsInWords(sheet: ReportSheet, points: TakeResult['criteria'][number]['points']): string {
  if (points === undefined) return '';
  const { number, table } = sheet.words;
  const possible = number(points.possible, 1);
  return points.given === null ? table.noPoints(possible) : table.pointsOf(number(points.given, 1), possible);
}
