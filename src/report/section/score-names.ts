import type { SectionResult } from '../../result/index.js';

/**
 * @param section the section's document
 * @returns what each score's file is called on the sheet: its name without the ending, where that tells it from the others
 */
export function scoreNames({ scores }: Pick<SectionResult, 'scores'>): (file: string) => string {
  const short = (file: string) => file.replace(/(?<=.)\.(?:musicxml|xml|mxl)$/i, '');
  const files = [...new Set(scores.map(({ file }) => file))];
  const unique = new Set(files.map(short)).size === files.length;
  return unique ? short : (file) => file;
}
