/** What some disk cannot have in the name of a folder, and what would lead out of it. Source: POSIX.1-2017; Windows file naming rules. */
const UNFIT = /[\p{Cc}\p{Zl}\p{Zp}<>:"/\\|?*]/gu;
const RESERVED = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\..*)?$/i;
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
  let plain = name
    .normalize('NFC')
    .replace(UNFIT, '_')
    .replace(/^[. ]+|[. ]+$/g, '');
  while (Buffer.byteLength(plain) > LONGEST_BYTES) plain = [...plain].slice(0, -1).join('').trimEnd();
  return plain === '' || RESERVED.test(plain) ? `_${plain}` : plain;
}

const key = (name: string): string => name.normalize('NFC').toLowerCase();
