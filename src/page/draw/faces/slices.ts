import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);

/** Where the packages of faces are kept. */
const SCOPE = '@fontsource-variable';

interface Range {
  readonly from: number;
  readonly to: number;
  readonly slice: string;
}

const known = new Map<string, readonly Range[] | null>();

/**
 * A package cuts its face into files by letters, because a reader of pages seldom needs all of them.
 *
 * @param name of the package, without its scope
 * @param codePoint of a letter
 * @returns the slice that holds the letter, e.g. `noto-serif-sc/115`, or null when the package does not have it or is not there
 */
export function sliceWith(name: string, codePoint: number): string | null {
  let ranges = known.get(name);
  if (ranges === undefined) {
    ranges = rangesOf(name);
    known.set(name, ranges);
  }
  const slice = ranges?.find(({ from, to }) => codePoint >= from && codePoint <= to)?.slice;
  return slice === undefined ? null : `${name}/${slice}`;
}

/**
 * @param slice as `sliceWith` names it
 * @returns the path of its file, in all weights
 */
export function fileOfSlice(slice: string): string {
  const [name, part] = slice.split('/');
  return require.resolve(`${SCOPE}/${name}/files/${name}-${part}-wght-normal.woff2`);
}

/**
 * @param name of a package, without its scope
 * @returns its whole name, as it is installed by, when it is not there; null when it is
 */
export function notInstalled(name: string): string | null {
  return rangesOf(name) === null ? `${SCOPE}/${name}` : null;
}

/** Its list gives ranges by file: `"[12]": "U+4e00-4e0f,U+4e11"`. Source: CSS Fonts 4, unicode-range. */
function rangesOf(name: string): Range[] | null {
  let list: Readonly<Record<string, string>>;
  try {
    list = require(`${SCOPE}/${name}/unicode.json`);
  } catch {
    return null;
  }
  return Object.entries(list).flatMap(([key, ranges]) =>
    ranges.split(',').map((range) => {
      const [from, to] = range
        .trim()
        .replace(/^U\+/i, '')
        .split('-')
        .map((digits) => Number.parseInt(digits, 16)) as [number, number?];
      return { from, to: to ?? from, slice: key.replace(/[[\]]/g, '') };
    }),
  );
}
