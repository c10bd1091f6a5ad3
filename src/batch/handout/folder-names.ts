import { fittingName } from '../disk/fitting-name.js';

const LONGEST_BYTES = 120;

/**
 * Gives each name a folder. Two names never share one, also on disks that tell neither letter case nor the encoding of an
 * accent apart.
 *
 * @param names all different, in the order in which folders are given
 * @returns the name of the folder by name
 */
export function folderNames(names: readonly string[]): Map<string, string> {
  const given = new Set<string>();
  return new Map(
    names.map((name) => {
      const plain = fitting(name);
      let folder = plain;
      for (let number = 2; given.has(key(folder)); number += 1) folder = `${plain} ${number}`;
      given.add(key(folder));
      return [name, folder];
    }),
  );
}

function fitting(name: string): string {
  return fittingName(name.normalize('NFC').replace(/^[. ]+|(?<![. ])[. ]+$/g, ''), LONGEST_BYTES);
}

const key = (name: string): string => name.normalize('NFC').toLowerCase();
