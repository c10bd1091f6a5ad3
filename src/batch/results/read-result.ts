import { join } from 'node:path';
import { InputError } from '../../base/index.js';
import { compiledTakeResult, type SectionRow, sectionRow, type TakeResult } from '../../result/index.js';
import { LARGEST_RESULT_BYTES, readWhole } from '../disk/read-whole.js';
import { withCodes } from '../history/old-sentences/with-codes.js';
import { refuseUnbounded } from '../history/refuse-unbounded.js';

/**
 * Reads a take's document back and keeps of it what the section needs.
 *
 * @param outFolder the folder for results
 * @param name the take's name
 * @returns its row
 * @throws InputError `not-readable` when it is no document of a take
 */
export function readResult(outFolder: string, name: string): SectionRow {
  return sectionRow(name, readTake(outFolder, name));
}

/**
 * Reads a take's document back.
 *
 * @param outFolder the folder for results
 * @param name the take's name
 * @returns the document
 * @throws InputError `not-readable` when it is no document of a take
 */
export function readTake(outFolder: string, name: string): TakeResult {
  try {
    const bytes = readWhole(join(outFolder, 'takes', `${name}.json`), LARGEST_RESULT_BYTES);
    const document = JSON.parse(new TextDecoder().decode(bytes));
    refuseUnbounded(document);
    return compiledTakeResult().parse(withCodes(document));
  } catch (error) {
    throw error instanceof InputError ? error : new InputError('result-unread');
  }
}
