import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { InputError } from '../../base/index.js';
import { type SectionRow, sectionRow, takeResultSchema } from '../../result/index.js';
import { diskFault } from '../disk/disk-fault.js';
import { withCodes } from '../history/old-sentences/with-codes.js';

/**
 * Reads a take's document back and keeps of it what the section needs.
 *
 * @param outFolder the folder for results
 * @param name the take's name
 * @returns its row
 * @throws InputError `not-readable` when it is no document of a take
 */
export function readResult(outFolder: string, name: string): SectionRow {
  try {
    const text = readFileSync(join(outFolder, 'takes', `${name}.json`), 'utf8');
    return sectionRow(name, takeResultSchema.parse(withCodes(JSON.parse(text))));
  } catch (error) {
    throw diskFault(error) ?? new InputError('result-unread');
  }
}
