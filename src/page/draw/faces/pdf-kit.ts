import { createRequire } from 'node:module';
import type PDFDocument from 'pdfkit';

const require = createRequire(import.meta.url);

/**
 * Reading PDFKit takes longer than reading all the rest of the program, so it waits until there is a page to draw.
 *
 * @returns PDFKit's document class
 */
export function loadPdfKit(): typeof PDFDocument {
  return require('pdfkit');
}
