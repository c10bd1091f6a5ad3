/**
 * Folds a name so that ways of writing it meet: letter case, kinds of dashes, underscores and spaces do not count, and
 * accents do.
 *
 * @param name a player's name, or a title
 * @returns the folded name, for comparing only
 *
 * Source: Unicode Standard Annex 15 (NFC) and the default case conversion of the Unicode Standard, section 3.13.
 */
export function foldName(name: string): string {
  return name
    .normalize('NFC')
    .replaceAll(/[\s\p{Pd}_]+/gu, ' ')
    .trim()
    .toLowerCase()
    .normalize('NFC');
}

/**
 * @param spellings ways in which one name was written, with repeats
 * @returns the one to show: the most frequent, of equals the first in code point order
 */
export function usualSpelling(spellings: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const one of spellings) counts.set(one, (counts.get(one) ?? 0) + 1);
  const ranked = [...counts].sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1));
  return ranked[0]?.[0] ?? '';
}
