import { basename, extname } from 'node:path';
import { InputError } from '../../base/index.js';
import type { FoundTake } from '../types.js';
import type { RosterLine } from './read-roster.js';

/** Which line speaks of which take. */
export interface MatchedRoster {
  /** by the take's absolute path */
  readonly byPath: ReadonlyMap<string, RosterLine>;
  /** lines that name no take */
  readonly unused: readonly number[];
}

/**
 * Finds the take each line of a roster names: by its path below the folder given, or by its file name where only one take
 * has it; the ending may be left out.
 *
 * @param lines the roster
 * @param takes the takes found
 * @returns the lines by take
 * @throws InputError `bad-roster` when a line could mean several takes, or two lines mean one
 */
export function matchRoster(lines: readonly RosterLine[], takes: readonly FoundTake[]): MatchedRoster {
  const index = indexOf(takes);
  const byPath = new Map<string, RosterLine>();
  const unused: number[] = [];
  for (const line of lines) {
    const found = index.get(line.file) ?? [];
    const [take] = found;
    if (found.length > 1) {
      throw new InputError('roster-several-takes', { line: line.line, takes: found.length });
    }
    if (take === undefined) {
      unused.push(line.line);
      continue;
    }
    const other = byPath.get(take.path);
    if (other !== undefined) {
      throw new InputError('roster-take-twice', { line: line.line, earlierLine: other.line });
    }
    byPath.set(take.path, line);
  }
  return { byPath, unused };
}

/** Takes by every name a roster may call them; an exact path stands before the shorter names. */
function indexOf(takes: readonly FoundTake[]): Map<string, FoundTake[]> {
  const index = new Map<string, FoundTake[]>();
  for (const namesOf of CALLED) {
    const round = new Map<string, FoundTake[]>();
    for (const take of takes) {
      const name = namesOf(take.file.normalize('NFC'));
      round.set(name, [...(round.get(name) ?? []), take]);
    }
    for (const [name, found] of round) if (!index.has(name)) index.set(name, found);
  }
  return index;
}

const CALLED: readonly ((file: string) => string)[] = [
  (file) => file,
  (file) => file.slice(0, file.length - extname(file).length),
  (file) => basename(file),
  (file) => basename(file, extname(file)),
];
