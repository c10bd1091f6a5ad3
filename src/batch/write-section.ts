import { rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Language } from '../base/index.js';
import { drawSectionSheets, type SectionSheetInput } from '../report/index.js';
import { jsonPieces, type SectionScore, sectionCsv, toSectionResult } from '../result/index.js';
import type { Tool } from '../review/index.js';
import { pageDate } from '../review/index.js';
import { numberedPath, sheetsThere } from './disk/numbered-path.js';
import { writeWhole } from './disk/write-whole.js';
import { failureOf } from './failures/failure-of.js';
import type { Place } from './results/write-take.js';
import type { TakeEnd, TakeFailure } from './types.js';

/** What is said about all takes, and where. */
export interface SectionRequest extends Place {
  readonly tool: Tool;
  /** named when no take has a result */
  readonly score?: SectionScore;
  /** English when it is left out */
  readonly language?: Language | undefined;
}

/** Gives the section's sheets, made one at a time. */
export type DrawSheets = (input: SectionSheetInput) => AsyncIterable<Uint8Array>;

/**
 * Writes what is said about all takes together: `section.csv`, `section.json` and `section.pdf`, which goes on in
 * `section-2.pdf` where there are more takes than one sheet holds.
 *
 * @param ends how every take ended, in the order in which they are to be listed
 * @param request where to write and how
 * @param draw draws the sheets, one after the other
 * @returns the takes' failures, and one more when the section's own files could not be written
 */
export async function writeSection(
  ends: readonly TakeEnd[],
  request: SectionRequest,
  draw: DrawSheets = drawSectionSheets,
): Promise<TakeFailure[]> {
  const { tool, score, paper, outFolder, language } = request;
  const rows = ends.flatMap((end) => ('row' in end ? [end.row] : []));
  const lost = ends.flatMap((end) => ('failure' in end ? [end] : []));
  const failures = lost.map(({ failure }) => failure);
  try {
    const section = toSectionResult({
      ...{ tool, rows, language },
      ...(score === undefined ? {} : { score }),
      failures: lost.map(({ name, failure, who, roster }) => ({
        ...{ name, ...failure, ...who },
        ...(roster === undefined ? {} : { roster }),
      })),
    });
    writeWhole(join(outFolder, 'section.csv'), sectionCsv(section));
    writeWhole(join(outFolder, 'section.json'), jsonPieces(section));
    if (request.jsonOnly) return failures;
    const creationDate = pageDate(section.takes.map(({ date }) => date));
    const path = join(outFolder, 'section.pdf');
    let number = 0;
    for await (const sheet of draw({ section, paper, creationDate })) {
      number += 1;
      writeWhole(numberedPath(path, number), sheet);
    }
    // what a larger run has left goes
    for (const sheet of sheetsThere(path, number + 1)) rmSync(sheet);
    return failures;
  } catch (error) {
    return [...failures, failureOf('section', error)];
  }
}
