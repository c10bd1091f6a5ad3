/** A word of more letters than this is a long one. */
const LONG = 6;

/**
 * How hard a text is to read: the mean length of its sentences plus the percentage of its long words.
 *
 * @param text plain sentences
 * @returns about 20 for very easy texts, 40 for books for the young and light fiction, 60 and more for hard prose
 *
 * Source: Björnsson 1968, Läsbarhet: words ÷ sentences + 100 × words of more than six letters ÷ words; a colon ends a
 * sentence there as well.
 */
export function lix(text: string): number {
  const sentences = text.split(/[.!?:](?=[\s“]|$)/).filter((one) => /\p{L}/u.test(one));
  const words = text.match(/[\p{L}\d♭♯,-]*[\p{L}\d][\p{L}\d♭♯-]*/gu) ?? [];
  const long = words.filter((word) => (word.match(/\p{L}/gu)?.length ?? 0) > LONG);
  return words.length / sentences.length + (100 * long.length) / words.length;
}
