import { failureOf } from '../failures/failure-of.js';
import type { SheetWork, WorkerAnswer } from './review-in-worker.js';

/**
 * Draws the section's sheet, or several. Never throws.
 *
 * @param work what the sheet shows
 * @returns the PDFs, or what went wrong
 */
export async function drawInWorker({ sheet }: SheetWork): Promise<WorkerAnswer> {
  try {
    const { drawSectionSheets } = await import('../../report/index.js');
    const sheets: Uint8Array[] = [];
    for await (const bytes of drawSectionSheets(sheet)) sheets.push(bytes);
    return { how: 'drawn', sheets };
  } catch (error) {
    return { how: 'failed', failure: failureOf('section', error) };
  }
}
