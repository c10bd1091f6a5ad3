import { STYLES, writeParagraph } from '../../page/index.js';
import type { TakeResult } from '../../result/index.js';
import { type Part, tempoBeat } from '../../score/index.js';
import { type BarRow, barRows } from '../bars/bar-rows.js';
import { captionsOf } from '../curves/captions-of.js';
import { drawRow } from '../curves/draw-row.js';
import { levelRange, rowCurve } from '../curves/level-range.js';
import type { Loudness } from '../curves/loudness-curve.js';
import { heightAroundPanel, rowWidth } from '../curves/row-sizes.js';
import { timeStretches } from '../curves/score-axis.js';
import type { ReportSheet } from '../report-sheet.js';
import type { Density } from './density.js';

const ROW_GAP = 10;
const HEADING_GAP = 18;
/** What rounding may take, so that a picture made to fit the page still fits it. */
const SLACK = 1;
/** Heights of the loudness panel: one row takes what the page offers between these, several rows take the least. */
const LEAST_PANEL = 56;
const MOST_PANEL = 96;

/**
 * The whole take in one picture: loudness over bars against the printed dynamics, tempo over bars under it.
 *
 * @param sheet pages being filled
 * @param content the take, reviewed, the part it was reviewed against, and the loudness of the recording
 * @param density how much white the picture may take
 */
export function drawAtAGlance(
  sheet: ReportSheet,
  { result, part, loudness }: { readonly result: TakeResult; readonly part: Part; readonly loudness: Loudness },
  density: Density,
): void {
  const rows = barRows(part, rowWidth(sheet));
  const stretches = timeStretches(result, part);
  const curves = rows.map((row) => rowCurve(row, loudness, stretches));
  const range = levelRange(curves, result);
  const captions = captionsOf(sheet.words, result, tempoBeat(part));
  const captionHeight = captions.reduce((sum, text) => sum + sheet.set(text, STYLES.soft, sheet.width).height, 0);
  const around = heightAroundPanel(part, result.tempo);
  const headHeight = STYLES.section.leading + captionHeight + 2;
  sheet.space(HEADING_GAP);
  sheet.ensure(headHeight + around + LEAST_PANEL + SLACK);
  const offered = sheet.room - headHeight - around - SLACK;
  const most = rows.length > 1 || density === 'tight' ? LEAST_PANEL : MOST_PANEL;
  const panelHeight = Math.max(LEAST_PANEL, Math.min(most, offered));
  const rowHeight = around + panelHeight;
  sheet.write('H2', sheet.words.glance.heading, STYLES.section);
  for (const caption of captions) writeParagraph(sheet, caption, STYLES.soft);
  sheet.space(2);
  for (const [i, row] of rows.entries()) {
    const curve = curves[i] as Float64Array;
    if (rows.length > 1 && !isHeard(curve)) {
      if (isHeard(curves[i - 1])) drawUnheard(sheet, rows.slice(i, nextHeard(curves, i)));
      continue;
    }
    sheet.ensure(rowHeight);
    drawRow(sheet, { part, result, row, curve, range, height: panelHeight });
    sheet.space(ROW_GAP);
  }
}

function isHeard(curve: Float64Array | undefined): boolean {
  return curve === undefined || curve.some((db) => !Number.isNaN(db));
}

function nextHeard(curves: readonly Float64Array[], from: number): number {
  const next = curves.findIndex((curve, i) => i > from && isHeard(curve));
  return next < 0 ? curves.length : next;
}

/** One sentence instead of rows without a curve. */
function drawUnheard(sheet: ReportSheet, rows: readonly BarRow[]): void {
  const [first, last] = [rows[0]?.bars[0]?.bar ?? '', rows.at(-1)?.bars.at(-1)?.bar ?? ''];
  writeParagraph(sheet, sheet.words.glance.notHeard(sheet.words.glance.bars(first, last)), STYLES.soft);
  sheet.space(ROW_GAP);
}
