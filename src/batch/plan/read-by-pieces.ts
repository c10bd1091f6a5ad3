/** What a name is made of: a text that stands there as it is, or a field. */
export type NamePiece = { readonly text: readonly string[] } | { readonly field: string };

const DAY = /^\d{4}[-_.]?\d{2}[-_.]?\d{2}/;
const LONGEST_DAY = 10;
const LINE_BREAK = /[\n\r\u2028\u2029]/;

/**
 * Reads a name piece by piece: each field takes as little as it can for the rest still to fit, the first field first. Where a
 * rest did not fit once it is not tried again, so the work grows no faster than pieces times the square of the letters.
 *
 * @param pieces what names are made of; a field `skip` may be empty, a field `date` is a day, any other takes one sign or more
 * @param name the name
 * @returns what stands in each field, null when the name is not made so
 *
 * Source: as `.+?` and `.*?` of regular expressions, ECMA-262, section 22.2.2 (with the flag u).
 */
export function readByPieces(pieces: readonly NamePiece[], name: string): Map<string, string> | null {
  const signs = [...name];
  const dead = new Set<number>();
  const found = new Map<string, string>();
  const fits = (place: number, at: number): boolean => {
    const piece = pieces[place];
    if (piece === undefined) return at === signs.length;
    const state = place * (signs.length + 1) + at;
    if (dead.has(state)) return false;
    for (const end of endsOf(piece, signs, at)) {
      if (!fits(place + 1, end)) continue;
      if ('field' in piece) found.set(piece.field, signs.slice(at, end).join(''));
      return true;
    }
    dead.add(state);
    return false;
  };
  return fits(0, 0) ? found : null;
}

/** Where a piece that begins at a place may end, the nearest first. */
function* endsOf(piece: NamePiece, signs: readonly string[], at: number): Generator<number> {
  if ('text' in piece) {
    if (piece.text.every((sign, i) => signs[at + i] === sign)) yield at + piece.text.length;
  } else if (piece.field === 'date') {
    const day = DAY.exec(signs.slice(at, at + LONGEST_DAY).join(''));
    if (day !== null) yield at + day[0].length;
  } else {
    if (piece.field === 'skip') yield at;
    for (let end = at + 1; end <= signs.length && !LINE_BREAK.test(signs[end - 1] as string); end++) yield end;
  }
}
