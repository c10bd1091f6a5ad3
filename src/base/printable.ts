/** What ends a line. */
const LINE_ENDS = /[\t\n\v\f\r\u0085\u2028\u2029]+/g;
/** What a terminal obeys or nobody can print: control codes, changes of direction, halves of a surrogate pair. */
const UNPRINTABLE = /[\p{Cc}\p{Cs}\u202a-\u202e\u2066-\u2069]/gu;

/**
 * @param text anything, perhaps out of a file that cannot be trusted
 * @returns the text on one line, with a mark (U+FFFD) wherever something cannot be printed
 *
 * Source: Unicode Standard, chapters 23.1 (control codes), 3.9 (surrogates); UAX 9 (explicit directional formatting).
 */
export function printable(text: string): string {
  return text.replace(LINE_ENDS, ' ').replace(UNPRINTABLE, '\ufffd');
}
