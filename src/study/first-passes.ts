import type { Part, PartNote } from '../score/index.js';

/**
 * @param part the part, repeats unfolded
 * @returns its notes as printed: each printed note once, in the order of the page
 */
export function firstPasses(part: Part): PartNote[] {
  const seen = new Set<string>();
  const notes = part.notes.filter(({ printedId }) => !seen.has(printedId) && seen.add(printedId));
  return notes.sort((a, b) => a.barIndex - b.barIndex || a.index - b.index);
}
