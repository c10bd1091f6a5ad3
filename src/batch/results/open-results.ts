import { lstatSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { byCodePoint, InputError } from '../../base/index.js';
import { clearPassingFiles } from '../disk/passing-files.js';
import { tryToWrite } from '../disk/try-to-write.js';
import { RECORDS } from './take-record.js';

/** Below the folder for results: what can be heard of takes. */
const SOUNDS = 'listen/sound';
/** Below the folder for results: the scores and briefs of takes that can be heard. */
export const SCORES = `${RECORDS}/scores`;
/** Below the folder for results: where documents of takes are. */
export const RESULT_FOLDERS = ['takes', SOUNDS] as const;

/**
 * Makes the folder for results ready: it can be written to, leads nowhere else, and holds nothing half written.
 *
 * @param folder the folder for results; made when it is missing
 * @throws InputError `cannot-write`, naming the folder as it was given
 */
export function openResults(folder: string): void {
  for (const below of ['takes', RECORDS, 'listen', SOUNDS, SCORES]) {
    if (isLink(join(folder, below))) {
      throw new InputError('folder-leads-away', { folder: below }).about(folder);
    }
  }
  tryToWrite(folder);
  clearPassingFiles(folder, ['takes', RECORDS, 'listen', SOUNDS, SCORES]);
}

function isLink(path: string): boolean {
  try {
    return lstatSync(path).isSymbolicLink();
  } catch {
    return false;
  }
}

/**
 * @param folder the folder for results
 * @returns names of the takes that have a result there, in code point order of their files
 * @throws InputError when there is none
 */
export function takesWithResults(folder: string): string[] {
  const files = filesIn(join(folder, 'takes')).filter((file) => file.endsWith('.json'));
  if (files.length === 0) throw new InputError('folder-without-results').about(folder);
  return files.map((file) => file.slice(0, -'.json'.length));
}

/**
 * @param folder any folder
 * @returns names of the files in it, without hidden ones, in code point order; none when it is not there
 */
export function filesIn(folder: string): string[] {
  try {
    const entries = readdirSync(folder, { withFileTypes: true });
    return entries
      .filter((entry) => entry.isFile() && !entry.name.startsWith('.'))
      .map(({ name }) => name)
      .sort(byCodePoint);
  } catch {
    return [];
  }
}
