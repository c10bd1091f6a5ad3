import { dirname } from 'node:path';
import type { ICruiseResult } from 'dependency-cruiser';

/**
 * Rooms whose own folder is at once the way in and the floor that its folders share, so that a folder and the room need each
 * other there. Folders beside each other must not, there as elsewhere. A room that has come apart must leave this list.
 */
export const SHARED_FLOORS: readonly string[] = ['batch', 'judge', 'measure', 'result', 'review', 'score', 'words'];

/**
 * Circles of folders inside the rooms: two folders that need each other are one folder in two places. An import counts for
 * the folders of both files. Two do not count: what a door `index.ts` hands on, and what a folder takes from the `types.ts`
 * above it, the language all folders of a room share.
 *
 * @param modules what was found in `src`
 * @param strict whether a folder and one inside it count, too
 * @returns one line a pair of folders that lead to each other, in order, each with a file that shows the way
 */
export function folderCircles(modules: ICruiseResult['modules'], strict = true): string[] {
  const imports = new Map<string, Map<string, string>>();
  for (const { source, dependencies } of modules) {
    if (source.endsWith('/index.ts')) continue;
    for (const { resolved } of dependencies) {
      const [from, to] = [dirname(source), dirname(resolved)];
      if (from === to || roomOf(from) !== roomOf(to) || isSharedAbove(from, resolved)) continue;
      if (!strict && (from.startsWith(`${to}/`) || to.startsWith(`${from}/`))) continue;
      const known = imports.get(from) ?? new Map<string, string>();
      imports.set(from, known.set(to, known.get(to) ?? `${source} -> ${resolved}`));
    }
  }
  const circles = [...imports].flatMap(([from, targets]) =>
    [...targets].flatMap(([to, shown]) => (reachable(imports, to).has(from) ? [`${from} <-> ${to}: ${shown}`] : [])),
  );
  return circles.sort();
}

/**
 * @param place a folder inside `src`, or a line about one
 * @returns the name of its room
 */
export const roomOf = (place: string): string => /^src\/([^/ ]+)/.exec(place)?.[1] ?? '';

const isSharedAbove = (from: string, file: string): boolean =>
  file.endsWith('/types.ts') && from.startsWith(`${dirname(file)}/`);

function reachable(imports: ReadonlyMap<string, ReadonlyMap<string, string>>, start: string): Set<string> {
  const found = new Set([start]);
  for (const folder of found) for (const next of imports.get(folder)?.keys() ?? []) found.add(next);
  return found;
}
