/**
 * What some disk cannot have in a name, what would lead out of a folder, and what would break a table of results or show a
 * name as another.
 */
const UNFIT = /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069<>:"/\\|?*]/gu;
/** Names of devices, with or without an ending. */
const RESERVED = /^(?:con|prn|aux|nul|conin\$|conout\$|com[\d¹²³]|lpt[\d¹²³])(?=\s*(?:\.|$))/i;

/**
 * @param name any text
 * @param longestBytes of the name as UTF-8
 * @returns a name for a file or folder that every usual disk can have: the same where it is one
 *
 * Source: POSIX.1-2017, section 3.282; Microsoft, "Naming Files, Paths, and Namespaces" (signs, device names, spaces and
 * dots at the end); UAX 9 (changes of direction).
 */
export function fittingName(name: string, longestBytes: number): string {
  const plain = withinBytes(name.replace(UNFIT, '_'), longestBytes)
    .replace(/^ +/, '_')
    .replace(/(?<![. ])[. ]+$/, '_');
  return plain === '' || RESERVED.test(plain) ? withinBytes(`_${plain}`, longestBytes) : plain;
}

function withinBytes(name: string, longest: number): string {
  let length = 0;
  let kept = '';
  for (const letter of name) {
    length += Buffer.byteLength(letter);
    if (length > longest) break;
    kept += letter;
  }
  return kept;
}
