import { mkdirSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';

/**
 * Makes a folder and those above it, one at a time from the first that is missing. A recursive `mkdir` does not come to an
 * end on file systems that refuse with ENOENT, such as procfs.
 *
 * @param folder the folder that is wanted; nothing happens when it is there
 * @throws the error of the system when one of them cannot be made
 *
 * Source: errors of mkdir(2), POSIX.1-2017.
 */
export function makeFolder(folder: string): void {
  const missing: string[] = [];
  for (let path = resolve(folder); !isThere(path); path = dirname(path)) missing.push(path);
  for (const path of missing.reverse()) makeOne(path);
}

function isThere(path: string): boolean {
  const facts = statSync(path, { throwIfNoEntry: false });
  if (facts !== undefined && !facts.isDirectory()) throw Object.assign(new Error('not a folder'), { code: 'ENOTDIR' });
  return facts !== undefined;
}

function makeOne(path: string): void {
  try {
    mkdirSync(path);
  } catch (error) {
    const madeMeanwhile = error instanceof Error && 'code' in error && error.code === 'EEXIST';
    if (!madeMeanwhile || !statSync(path).isDirectory()) throw error;
  }
}
