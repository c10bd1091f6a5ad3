import { readdirSync, realpathSync, statSync } from 'node:fs';
import { basename, extname, join, relative, resolve, sep } from 'node:path';
import { byCodePoint, InputError } from '../../base/index.js';
import { failureOf } from '../failures/failure-of.js';
import type { FoundTake, TakeFailure } from '../types.js';

const WAV_ENDINGS = new Set(['.wav', '.wave']);
const OTHER_AUDIO_ENDINGS = new Set(
  '.mp3 .m4a .mp4 .aac .flac .aif .aiff .aifc .ogg .oga .opus .wma .caf .amr .webm'.split(' '),
);

/** What lies under the paths that were given. */
export interface Found {
  /** in code point order of `file` */
  readonly takes: readonly FoundTake[];
  /** what looks like a take but cannot be one, in the same order */
  readonly failures: readonly { readonly path: string; readonly failure: TakeFailure }[];
}

/**
 * Finds the takes. A file that is named is always taken; in folders, searched to any depth, files ending in `.wav` or
 * `.wave` count, hidden files (and with them the `._` companions some systems write) do not, and other audio formats
 * become failures that say what to do. A folder reached twice, also through a link that leads back, is searched once.
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
  const ending = extname(path).toLowerCase();
  if (isFolder(path)) {
    searchFolder(search, root, path);
  } else if (WAV_ENDINGS.has(ending)) {
    if (!search.takes.has(path)) search.takes.set(path, { path, file: below(root, path) });
  } else if (OTHER_AUDIO_ENDINGS.has(ending)) {
    throw new InputError('other-audio', { ending });
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
