import { drawPdf, type PaperSize } from '../../page/index.js';
import type { SectionResult } from '../../result/index.js';
import { typesetterIn } from '../typesetter-in.js';
import { layoutSectionSheet } from './layout-section-sheet.js';
import { sectionSheets } from './section-sheets.js';

/** A sheet is made in memory, a tenth of a megabyte a take. Source: measured, see tests/bench/README.md. */
const MOST_LINES = 500;

/** Everything the section's PDF is made from. */
export interface SectionSheetInput {
  readonly section: SectionResult;
  readonly paper: PaperSize;
  /** goes into the file instead of the clock */
  readonly creationDate: Date;
  /** takes and failures that one sheet lists at most */
  readonly mostLines?: number;
}

/**
 * Draws the director's sheet for all takes of a review, or several where one would be too large.
 *
 * @param input the section's document, paper and date
 * @returns tagged PDFs in landscape with embedded faces, made one at a time; the same input gives the same bytes
 *
 * Source: ISO 32000-1; ISO 14289-1.
 */
export async function* drawSectionSheets(input: SectionSheetInput): AsyncGenerator<Uint8Array> {
  const { section, paper, creationDate, mostLines = MOST_LINES } = input;
  const typesetter = typesetterIn(section.language);
  for (const part of sectionSheets(section, mostLines)) {
    yield await drawPdf(layoutSectionSheet(section, part, paper, typesetter), creationDate);
  }
}
