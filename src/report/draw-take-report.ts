import { drawPdf } from './draw/draw-pdf.js';
import { createTypesetter } from './draw/typesetter.js';
import { layoutTakeReport, type TakeReportContent } from './layout/take/layout-take-report.js';

/** Everything a take's PDF is made from. */
export interface TakeReportInput extends TakeReportContent {
  /** goes into the file instead of the clock */
  readonly creationDate: Date;
}

/**
 * Draws the pages a player practises from.
 *
 * @param input the take's result, the part it was reviewed against, the recording's loudness (dBFS; the centre of frame f
 * is at `(f + 0.5) * hopSeconds`), paper and date
 * @returns a tagged PDF with embedded faces; the same input gives the same bytes
 *
 * Source: ISO 32000-1; ISO 14289-1.
 */
export async function drawTakeReport(input: TakeReportInput): Promise<Uint8Array> {
  return drawPdf(layoutTakeReport(input, createTypesetter()), input.creationDate);
}
