import { closeSync, openSync, readdirSync, readSync, realpathSync, statSync } from 'node:fs';
import { basename, extname, join, relative, resolve, sep } from 'node:path';
import { byCodePoint } from '../../base/index.js';
import { soundsLikeOne } from '../../decode/index.js';
import { failureOf } from '../failures/failure-of.js';
import type { FoundTake, TakeFailure } from '../types.js';
import { RECORDING_ENDINGS } from './recording-endings.js';

/** Enough to tell sound by its first bytes. */
const HEAD_BYTES = 64;

/** What lies under the paths that were given. */
export interface Found {
  /** in code point order of `file` */
  readonly takes: readonly FoundTake[];
  /** what looks like a take but cannot be one, in the same order */
  readonly failures: readonly { readonly path: string; readonly failure: TakeFailure }[];
}

/**
 * Finds the takes. A file that is named is always taken; in folders, searched to any depth, files count whose ending is
 * that of a recording or whose first bytes are those of one, hidden files (and with them the `._` companions some systems
 * write) do not. A folder reached twice, also through a link that leads back, is searched once.
 *
 * @param inputs files and folders as the user gave them
 * @returns takes and failures, both in code point order of the path below the folder given
 */
export function findTakes(inputs: readonly string[]): Found {
  const search: Search = { takes: new Map(), failures: new Map(), foldersSeen: new Set() };
  for (const input of inputs) {
    const path = resolve(input);
    attempt(search, path, basename(path), () => {
      if (statSync(path).isDirectory()) searchFolder(search, path, path);
      else search.takes.set(path, { path, file: basename(path) });
    });
  }
  const takes = [...search.takes.values()].sort((a, b) => byCodePoint(a.file, b.file) || byCodePoint(a.path, b.path));
  const failures = [...search.failures].map(([path, failure]) => ({ path, failure }));
  failures.sort((a, b) => byCodePoint(a.failure.file, b.failure.file) || byCodePoint(a.path, b.path));
  return { takes, failures };
}

/** What has been found so far, by absolute path. */
interface Search {
  readonly takes: Map<string, FoundTake>;
  readonly failures: Map<string, TakeFailure>;
  /** with every link resolved */
  readonly foldersSeen: Set<string>;
}

function searchFolder(search: Search, root: string, folder: string): void {
  const realFolder = realpathSync(folder);
  if (search.foldersSeen.has(realFolder)) return;
  search.foldersSeen.add(realFolder);
  for (const name of readdirSync(folder).sort(byCodePoint)) {
    if (name.startsWith('.')) continue;
    const path = join(folder, name);
    attempt(search, path, below(root, path), () => searchEntry(search, root, path));
  }
}

function searchEntry(search: Search, root: string, path: string): void {
  if (isFolder(path)) searchFolder(search, root, path);
  else if (!search.takes.has(path) && isRecording(path)) search.takes.set(path, { path, file: below(root, path) });
}

function isRecording(path: string): boolean {
  return RECORDING_ENDINGS.has(extname(path).toLowerCase()) || soundsLikeOne(headOf(path));
}

/** What cannot be opened, or is no ordinary file, has no first bytes. */
function headOf(path: string): Uint8Array {
  const head = new Uint8Array(HEAD_BYTES);
  try {
    if (!statSync(path).isFile()) return new Uint8Array();
    const file = openSync(path, 'r');
    try {
      return head.subarray(0, readSync(file, head));
    } finally {
      closeSync(file);
    }
  } catch {
    return new Uint8Array();
  }
}

function below(root: string, path: string): string {
  return relative(root, path).split(sep).join('/');
}

function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    return false;
  }
}

function attempt(search: Search, path: string, file: string, look: () => void): void {
  try {
    look();
  } catch (error) {
    search.failures.set(path, failureOf(file, error));
  }
}
