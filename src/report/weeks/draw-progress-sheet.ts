import { drawPdf, type PaperSize } from '../../page/index.js';
import type { ProgressSheet } from '../../weeks/index.js';
import { typesetterIn } from '../typesetter-in.js';
import { layoutProgressSheet } from './layout-weeks-sheet.js';

/** Everything the progress sheet's PDF is made from. */
export interface ProgressSheetInput extends ProgressSheet {
  readonly paper: PaperSize;
  /** goes into the file instead of the clock */
  readonly creationDate: Date;
}

/**
 * Draws the sheet that follows players over weeks.
 *
 * @param input the document or a part of it, which part it is, paper and date
 * @returns a tagged PDF in landscape with embedded faces; the same input gives the same bytes
 *
 * Source: ISO 32000-1; ISO 14289-1.
 */
export async function drawProgressSheet(input: ProgressSheetInput): Promise<Uint8Array> {
  const typesetter = typesetterIn(input.progress.language);
  return drawPdf(layoutProgressSheet(input, input.paper, typesetter), input.creationDate);
}
