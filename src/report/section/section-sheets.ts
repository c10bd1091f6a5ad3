import type { SectionResult } from '../../result/index.js';

/** What one of a section's sheets shows. */
export interface SectionSheet {
  /** the section's document, with the takes and failures that are listed on this sheet */
  readonly section: SectionResult;
  /** takes left out because the same player has a later one; all of them, on the first sheet alone */
  readonly older: number;
  /** from 1 */
  readonly sheet: number;
  readonly of: number;
}

/**
 * Divides what is listed take by take: the latest take of each player, in their order, and then what could not be read.
 *
 * @param section the section's document
 * @param mostLines takes and failures listed on one sheet
 * @returns sheets, at least one
 */
export function sectionSheets(section: SectionResult, mostLines: number): SectionSheet[] {
  const latest = section.takes.filter((take) => take.latest !== false);
  const { failures } = section;
  const of = Math.max(1, Math.ceil((latest.length + failures.length) / mostLines));
  return Array.from({ length: of }, (_, i) => {
    const [from, to] = [i * mostLines, (i + 1) * mostLines];
    return {
      section: {
        ...section,
        takes: latest.slice(from, to),
        failures: failures.slice(Math.max(0, from - latest.length), Math.max(0, to - latest.length)),
      },
      older: i === 0 ? section.takes.length - latest.length : 0,
      sheet: i + 1,
      of,
    };
  });
}
