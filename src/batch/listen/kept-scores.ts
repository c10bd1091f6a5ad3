import { rmSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Etude } from '../../review/index.js';
import { LARGEST_DOCUMENT_BYTES, readWhole } from '../disk/read-whole.js';
import { writeWhole } from '../disk/write-whole.js';
import { briefOf, etudeFiles, readEtudes } from '../plan/read-etudes.js';
import { filesIn, SCORES } from '../results/open-results.js';
import type { ReviewRequest } from '../types.js';

/**
 * Keeps the scores and briefs of a run beside the records of its takes, so that the listening room can be written anew from
 * results alone. What an earlier run kept of the same scores is replaced.
 *
 * @param request which scores and briefs, and the folder for results
 * @throws InputError when they cannot be read or written
 */
export function keepScores(request: ReviewRequest): void {
  const kept = join(request.outFolder, SCORES);
  for (const { score, brief } of etudeFiles(request)) {
    const name = basename(score);
    writeWhole(join(kept, name), readWhole(score, LARGEST_DOCUMENT_BYTES));
    const beside = join(kept, briefOf(name));
    if (brief === undefined) rmSync(beside, { force: true });
    else writeWhole(beside, readWhole(brief, LARGEST_DOCUMENT_BYTES));
  }
}

/**
 * @param folder the folder for results
 * @returns the études that takes with sound were reviewed against; none when none were kept
 * @throws InputError naming the file when one of them cannot be read
 */
export function keptEtudes(folder: string): Etude[] {
  const kept = join(folder, SCORES);
  return filesIn(kept).length === 0 ? [] : readEtudes({ scoresFolder: kept, jsonOnly: false });
}
