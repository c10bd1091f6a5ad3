import { randomUUID } from 'node:crypto';
import { renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { InputError } from '../base/index.js';
import { makeFolder } from './make-folder.js';
import { PASSING_NAME } from './passing-files.js';

/**
 * Writes a file whole or not at all: under a passing name in the same folder first, then renamed. The folder is made
 * when it is missing.
 *
 * @param path where the file belongs; a file that is there is replaced
 * @param content bytes, or text to be written as UTF-8
 * @throws InputError `cannot-write` when the disk refuses; then nothing is left behind
 *
 * Source: rename(2) in POSIX.1-2017 replaces a name in one step.
 */
export function writeWhole(path: string, content: Uint8Array | string): void {
  const passing = join(dirname(path), `${PASSING_NAME}${process.pid}-${randomUUID()}`);
  try {
    makeFolder(dirname(path));
    writeFileSync(passing, content);
    renameSync(passing, path);
  } catch (error) {
    removeIfThere(passing);
    throw new InputError('cannot-write', `cannot write here (${reason(error)}); choose a folder you may write to`);
  }
}

function removeIfThere(path: string): void {
  try {
    rmSync(path, { force: true });
  } catch {
    // A disk that has just refused to write may refuse this too; the next run clears it away.
  }
}

function reason(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return REASONS[code] ?? `the disk says ${code}`;
}

const REASONS: Readonly<Record<string, string>> = {
  EACCES: 'not allowed',
  EPERM: 'not allowed',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk is full for you',
  EFBIG: 'files may not become this large here',
  ENOTDIR: 'a file is in the way of the folder',
  EEXIST: 'a file is in the way of the folder',
  EISDIR: 'a folder is in the way of the file',
  ENOENT: 'the folder cannot be made',
  ENAMETOOLONG: 'the name is too long',
  ELOOP: 'a link here leads back to itself',
};
