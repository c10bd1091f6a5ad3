import { randomUUID } from 'node:crypto';
import { closeSync, openSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type FaultFacts, InputError } from '../../base/index.js';
import { makeFolder } from './make-folder.js';
import { PASSING_NAME } from './passing-files.js';

/** Permissions before the umask takes its part. Source: chmod(2), POSIX.1-2017. */
const EVERYONE = 0o666;
const OWNER_ALONE = 0o600;
/** Written in one go. */
const PIECE_LETTERS = 2 ** 20;

/**
 * Writes a file whole or not at all: under a passing name in the same folder first, then renamed. The folder is made
 * when it is missing.
 *
 * @param path where the file belongs; a file that is there is replaced
 * @param content bytes, or text to be written as UTF-8, also in pieces that are made while it is written
 * @param readers who may read it: whoever the umask allows, or its owner alone
 * @throws InputError `cannot-write` when the disk refuses; then nothing is left behind
 *
 * Source: rename(2) in POSIX.1-2017 replaces a name in one step.
 */
export function writeWhole(
  path: string,
  content: Uint8Array | string | Iterable<string>,
  readers: 'all' | 'owner' = 'all',
): void {
  const passing = join(dirname(path), `${PASSING_NAME}${process.pid}-${randomUUID()}`);
  try {
    makeFolder(dirname(path));
    writeTo(passing, content, readers === 'owner' ? OWNER_ALONE : EVERYONE);
    renameSync(passing, path);
  } catch (error) {
    removeIfThere(passing);
    // What makes the pieces may fail, too.
    if (error instanceof InputError || !(error instanceof Error) || !('code' in error)) throw error;
    const said = String(error.code);
    const why = REASONS[said] ?? 'other';
    throw new InputError('cannot-write', { why, said: why === 'other' ? said : '' });
  }
}

function writeTo(path: string, content: Uint8Array | string | Iterable<string>, mode: number): void {
  if (typeof content === 'string' || content instanceof Uint8Array) {
    writeFileSync(path, content, { mode });
    return;
  }
  const file = openSync(path, 'w', mode);
  try {
    let gathered = '';
    for (const piece of content) {
      gathered += piece;
      if (gathered.length < PIECE_LETTERS) continue;
      writeFileSync(file, gathered);
      gathered = '';
    }
    writeFileSync(file, gathered);
  } finally {
    closeSync(file);
  }
}

function removeIfThere(path: string): void {
  try {
    rmSync(path, { force: true });
  } catch {
    // A disk that has just refused to write may refuse this too; the next run clears it away.
  }
}

/** Faults by their names in POSIX.1-2017, section 2.3. */
const REASONS: Readonly<Record<string, FaultFacts<'cannot-write'>['why']>> = {
  EACCES: 'not-allowed',
  EPERM: 'not-allowed',
  EROFS: 'read-only',
  ENOSPC: 'full',
  EDQUOT: 'full-for-you',
  EFBIG: 'too-large',
  ENOTDIR: 'file-in-the-way',
  EEXIST: 'file-in-the-way',
  EISDIR: 'folder-in-the-way',
  ENOENT: 'no-folder',
  ENAMETOOLONG: 'long-name',
  ELOOP: 'link-in-circle',
  EMFILE: 'files-open',
  ENFILE: 'files-open',
};
