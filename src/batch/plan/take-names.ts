import { basename, dirname, extname, sep } from 'node:path';
import { fittingName } from '../disk/fitting-name.js';
import type { FoundTake, NamedTake } from '../types.js';

/** Room for the longest ending and for the mark of a file being written; 255 bytes a name is the usual limit of disks. */
const LONGEST_NAME_BYTES = 200;

/**
 * Gives each take the name its results are written under: the file's name without its ending. Takes that would share a
 * name are told apart by the folder they are in, `<folder>--<name>`, and by further folders above it as far as needed;
 * in one folder by their ending, `<name>-wav`, and at last by a number. Names count as shared also when they differ only in letter
 * case or in how an accent is encoded, because some disks cannot keep such names apart.
 *
 * @param takes in any order
 * @returns the same takes in the same order; the names differ from each other and hold no path separator
 */
export function nameTakes(takes: readonly FoundTake[]): NamedTake[] {
  const drafts = takes.map((take) => ({ take, folders: foldersOf(take.path), own: stem(take.path), depth: 0 }));
  for (const group of shared(drafts, (draft) => [...draft.folders, draft.own].join(sep))) {
    for (const draft of group) draft.own = basename(draft.take.path).replace(/\.([^.]*)$/, '-$1');
  }
  for (;;) {
    const deeper = shared(drafts, fullName)
      .filter(apart)
      .flat()
      .filter((draft) => draft.depth < draft.folders.length);
    if (deeper.length === 0) break;
    for (const draft of deeper) draft.depth += 1;
  }
  return numbered(drafts);
}

interface Draft {
  readonly take: FoundTake;
  /** outermost first */
  readonly folders: readonly string[];
  own: string;
  /** how many folders stand before the name */
  depth: number;
}

function stem(path: string): string {
  return basename(path, extname(path));
}

function foldersOf(path: string): string[] {
  return dirname(path)
    .split(sep)
    .filter((folder) => folder !== '');
}

/** Whether folders can tell the takes of a group apart. */
function apart(group: readonly Draft[]): boolean {
  return new Set(group.map((draft) => key(draft.folders.join(sep)))).size > 1;
}

function key(name: string): string {
  return name.normalize('NFC').toLowerCase();
}

function fullName(draft: Draft): string {
  const above = draft.folders.slice(draft.folders.length - draft.depth);
  return fittingName([...above, draft.own].join('--'), LONGEST_NAME_BYTES);
}

function shared(drafts: readonly Draft[], nameOf: (draft: Draft) => string): Draft[][] {
  const groups = new Map<string, Draft[]>();
  for (const draft of drafts) {
    const name = key(nameOf(draft));
    groups.set(name, [...(groups.get(name) ?? []), draft]);
  }
  return [...groups.values()].filter((group) => group.length > 1);
}

function numbered(drafts: readonly Draft[]): NamedTake[] {
  const given = new Set<string>();
  return drafts.map((draft) => {
    const plain = fullName(draft);
    let name = plain;
    for (let number = 2; given.has(key(name)); number += 1) name = `${plain}--${number}`;
    given.add(key(name));
    return { ...draft.take, name };
  });
}
