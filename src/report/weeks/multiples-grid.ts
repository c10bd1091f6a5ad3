import { type Item, placeText, STYLES } from '../../page/index.js';
import type { ProgressMeasure } from '../../weeks/index.js';
import type { ReportSheet } from '../report-sheet.js';
import type { Scales } from './scales.js';
import { frameOf, MULTIPLE, type MultipleFrame } from './small-multiple.js';

const A_ROW = 7;
const FOOT = 10;

/**
 * @param count how many small multiples
 * @returns height of the grid, points
 */
export function gridHeight(count: number): number {
  return Math.ceil(count / A_ROW) * MULTIPLE.height + FOOT;
}

/**
 * A figure of small multiples, one a measure, with first and last day under the last row.
 *
 * @param sheet pages being filled, with room for the grid
 * @param measures what is shown, in order
 * @param scales what the small multiples share
 * @param days first and last day in words, or one
 * @param alternative the whole figure in words
 * @param draw what to draw for one measure in its frame
 */
export function drawGrid(
  sheet: ReportSheet,
  measures: readonly ProgressMeasure[],
  scales: Scales,
  days: readonly string[],
  alternative: string,
  draw: (measure: ProgressMeasure, frame: MultipleFrame) => Item[],
): void {
  const width = (sheet.width - (A_ROW - 1) * MULTIPLE.gap) / A_ROW;
  const height = gridHeight(measures.length);
  const frames = measures.map((measure, i) => {
    const left = sheet.left + (i % A_ROW) * (width + MULTIPLE.gap);
    return { measure, frame: frameOf(measure, scales, left, sheet.y + Math.floor(i / A_ROW) * MULTIPLE.height, width) };
  });
  const lowest = frames.slice(-A_ROW);
  const items = [
    ...frames.flatMap(({ measure, frame }) => draw(measure, frame)),
    ...lowest.flatMap(({ frame }) => dayItems(sheet, frame, days)),
  ];
  sheet.elements.push({
    tag: 'Figure',
    alternative,
    box: [sheet.left, sheet.y, sheet.left + sheet.width, sheet.y + height],
    children: [{ page: sheet.page, items }],
  });
  sheet.y += height;
}

/** First day under the left edge, last day under the right. */
function dayItems(sheet: ReportSheet, frame: MultipleFrame, days: readonly string[]): Item[] {
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return [];
  const top = frame.plotFoot + 1;
  if (first === last) {
    const style = { ...STYLES.axis, align: 'centre' } as const;
    return placeText(sheet.set(sheet.words.shortDay(first), style, frame.width), frame.left, top);
  }
  const right = sheet.set(sheet.words.shortDay(last), { ...STYLES.axis, align: 'right' }, 40);
  return [
    ...placeText(sheet.set(sheet.words.shortDay(first), STYLES.axis, 40), frame.plotLeft - 3, top),
    ...placeText(right, frame.plotRight - 37, top),
  ];
}
