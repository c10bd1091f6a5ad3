import { join } from 'node:path';
import { drawSectionSheet, sectionCsv, toSectionResult } from '../report/index.js';
import { failureOf } from './failure-of.js';
import { pageDate } from './page-date.js';
import type { SharedWork } from './review-file.js';
import { toJson } from './to-json.js';
import type { TakeEnd, TakeFailure } from './types.js';
import { writeWhole } from './write-whole.js';

/**
 * Writes what is said about all takes together: `section.csv`, `section.json` and `section.pdf`.
 *
 * @param ends how every take ended, in the order in which they are to be listed
 * @param work what all takes share
 * @returns the takes' failures, and one more when the section's own files could not be written
 *
 * Source: definition.
 */
export async function writeSection(ends: readonly TakeEnd[], work: SharedWork): Promise<TakeFailure[]> {
  const { tool, score, part, paper, outFolder } = work;
  const takes = ends.flatMap((end) => ('result' in end ? [end] : []));
  const failures = ends.flatMap((end) => ('failure' in end ? [end.failure] : []));
  try {
    const section = toSectionResult({ tool, score, part, takes, failures });
    const creationDate = pageDate(takes.map(({ result }) => result.take.date));
    const pdf = work.jsonOnly ? null : await drawSectionSheet({ section, paper, creationDate });
    writeWhole(join(outFolder, 'section.csv'), sectionCsv(section));
    writeWhole(join(outFolder, 'section.json'), toJson(section));
    if (pdf !== null) writeWhole(join(outFolder, 'section.pdf'), pdf);
    return failures;
  } catch (error) {
    return [...failures, failureOf('section', error)];
  }
}
