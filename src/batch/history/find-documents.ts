import { readdirSync, realpathSync, statSync } from 'node:fs';
import { basename, extname, join, relative, resolve, sep } from 'node:path';
import { byCodePoint } from '../../base/index.js';
import { failureOf } from '../failures/failure-of.js';
import type { TakeFailure } from '../types.js';

/** A JSON file that may hold a result. */
export interface FoundDocument {
  /** absolute path */
  readonly path: string;
  /** the folder given and the path below it, with `/` between folders; never a path of the machine */
  readonly file: string;
  /** given by name, not found in a folder */
  readonly named: boolean;
}

/** What lies under the paths that were given. */
export interface FoundDocuments {
  readonly documents: readonly FoundDocument[];
  readonly failures: readonly TakeFailure[];
}

/**
 * Finds JSON files: those named, and all in folders to any depth, hidden ones left out. A folder or file reached twice
 * counts once.
 *
 * @param inputs files and folders as the user gave them
 * @returns files in code point order, and what could not be opened
 */
export function findDocuments(inputs: readonly string[]): FoundDocuments {
  const documents = new Map<string, FoundDocument>();
  const failures: TakeFailure[] = [];
  const seen = new Set<string>();
  const look = (path: string, file: string, named: boolean): void => {
    try {
      const real = realpathSync(path);
      if (statSync(real).isDirectory()) {
        if (seen.has(real)) return;
        seen.add(real);
        for (const name of readdirSync(path).sort(byCodePoint)) {
          if (!name.startsWith('.')) look(join(path, name), `${file}/${name}`, false);
        }
      } else if ((named || extname(path).toLowerCase() === '.json') && !documents.has(real)) {
        documents.set(real, { path, file, named });
      }
    } catch (error) {
      failures.push(failureOf(file, error));
    }
  };
  for (const input of inputs) look(resolve(input), nameOf(input), true);
  const found = [...documents.values()].sort((a, b) => byCodePoint(a.file, b.file) || byCodePoint(a.path, b.path));
  return { documents: found, failures };
}

/** What a folder is called below the working folder, or by its own name when it lies elsewhere. */
function nameOf(input: string): string {
  const below = relative(process.cwd(), resolve(input));
  const inside = below !== '' && !below.startsWith('..') && resolve(below) === resolve(input);
  return inside && !below.includes(':') ? below.split(sep).join('/') : basename(resolve(input));
}
