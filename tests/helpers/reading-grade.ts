/** Endings whose vowel letters are not heard, or are heard as one. */
const SILENT = /(?:[^laeiouy]es|[^aeioudt]ed|[^laeiouy]e)$/;
/** Vowel letters that stand for two syllables. */
const TWO = [/ia(?!n?l?$)/g, /iu/g, /eo/g, /[aeiouy]ing/g, /rhythm/g, /[^aeiouy]ier$/g];

/** Syllables of an English word by its letters; a number, a note's name or a sign counts as one. */
export function syllables(word: string): number {
  const letters = word.toLowerCase().replace(/[^a-z]/g, '');
  if (letters.length < 4) return 1;
  const groups = letters.replace(SILENT, (end) => end.slice(0, 1)).match(/[aeiouy]+/g)?.length ?? 1;
  const more = TWO.reduce((sum, pattern) => sum + (letters.match(pattern)?.length ?? 0), 0);
  return Math.max(1, groups + more);
}

/**
 * The school grade at which a text is read without help.
 *
 * @param text plain sentences
 * @returns 0.39 words a sentence + 11.8 syllables a word − 15.59
 *
 * Source: Kincaid, Fishburne, Rogers and Chissom 1975, Derivation of new readability formulas for Navy enlisted personnel.
 */
export function readingGrade(text: string): number {
  const sentences = text.split(/[.!?:;](?=\s|$)/).filter((one) => /\w/.test(one));
  const words = text.split(/[\s–—]+/).filter((word) => /[\p{L}\d]/u.test(word));
  const spoken = words.reduce((sum, word) => sum + syllables(word), 0);
  return (0.39 * words.length) / sentences.length + (11.8 * spoken) / words.length - 15.59;
}

/** Words of each sentence of a text. Source: definition. */
export function sentenceLengths(text: string): number[] {
  return text
    .split(/[.!?](?=\s|$)/)
    .map((one) => one.split(/[\s–—]+/).filter((word) => /[\p{L}\d]/u.test(word)).length)
    .filter((length) => length > 0);
}
