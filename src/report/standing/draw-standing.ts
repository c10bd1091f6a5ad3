import { drawPdf, type PaperSize } from '../../page/index.js';
import type { Standing } from '../../result/index.js';
import { typesetterIn } from '../typesetter-in.js';
import { layoutPanelSheet } from './layout-panel-sheet.js';
import { layoutStanding } from './layout-standing.js';

/** Everything the pages are made from. */
export interface StandingSheetInput {
  readonly standing: Standing;
  readonly paper: PaperSize;
  /** goes into the file instead of the clock */
  readonly creationDate: Date;
}

/**
 * Draws the table a director needs.
 *
 * @param input the document, paper and date
 * @returns a tagged PDF in landscape; the same input gives the same bytes
 *
 * Source: ISO 32000-1; ISO 14289-1.
 */
export function drawStanding({ standing, paper, creationDate }: StandingSheetInput): Promise<Uint8Array> {
  return drawPdf(layoutStanding(standing, paper, typesetterIn(standing.language)), creationDate);
}

/**
 * Draws the blank sheet on which a panel writes its own marks.
 *
 * @param input the document, paper and date
 * @returns a tagged PDF in landscape; the same input gives the same bytes
 *
 * Source: ISO 32000-1; ISO 14289-1.
 */
export function drawPanelSheet({ standing, paper, creationDate }: StandingSheetInput): Promise<Uint8Array> {
  return drawPdf(layoutPanelSheet(standing, paper, typesetterIn(standing.language)), creationDate);
}
