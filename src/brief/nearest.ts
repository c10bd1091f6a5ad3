/**
 * @param word what stands there
 * @param words what is allowed
 * @returns the allowed word that is most like it, null when none is
 *
 * Source: Levenshtein 1966 (edit distance).
 */
export function nearest(word: string, words: readonly string[]): string | null {
  const ranked = words
    .map((other) => ({ other, distance: editDistance(word.toLowerCase().slice(0, 60), other.toLowerCase()) }))
    .sort((a, b) => a.distance - b.distance);
  const best = ranked[0];
  return best !== undefined && best.distance <= Math.max(2, best.other.length / 2) ? best.other : null;
}

function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let k = 1; k <= b.length; k++) {
      const changed = (row[k - 1] as number) + (a[i - 1] === b[k - 1] ? 0 : 1);
      next.push(Math.min(changed, (row[k] as number) + 1, (next[k - 1] as number) + 1));
    }
    row = next;
  }
  return row[b.length] as number;
}
