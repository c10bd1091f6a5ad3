import { randomUUID } from 'node:crypto';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { InputError } from '../../base/index.js';
import { writeWhole } from './write-whole.js';

/**
 * Makes sure, before any work is done, that results can be written.
 *
 * @param folder where the results go; it is made, with its folder for takes
 * @throws InputError `cannot-write`, naming the folder as it was given
 */
export function tryToWrite(folder: string): void {
  const trial = join(folder, 'takes', `.trial-${randomUUID()}`);
  try {
    writeWhole(trial, '');
  } catch (error) {
    if (error instanceof InputError) throw error.about(folder);
    throw error;
  }
  rmSync(trial);
}
