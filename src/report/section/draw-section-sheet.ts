import { drawPdf, type PaperSize } from '../../page/index.js';
import type { SectionResult } from '../../result/index.js';
import { typesetterIn } from '../typesetter-in.js';
import { layoutSectionSheet } from './layout-section-sheet.js';

/** Everything the section's PDF is made from. */
export interface SectionSheetInput {
  readonly section: SectionResult;
  readonly paper: PaperSize;
  /** goes into the file instead of the clock */
  readonly creationDate: Date;
}

/**
 * Draws the director's sheet for all takes of a review.
 *
 * @param input the section's document, paper and date
 * @returns a tagged PDF in landscape with embedded faces; the same input gives the same bytes
 *
 * Source: ISO 32000-1; ISO 14289-1.
 */
export async function drawSectionSheet(input: SectionSheetInput): Promise<Uint8Array> {
  const typesetter = typesetterIn(input.section.language);
  return drawPdf(layoutSectionSheet(input.section, input.paper, typesetter), input.creationDate);
}
