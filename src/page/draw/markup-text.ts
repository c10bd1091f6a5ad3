const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/**
 * Makes any text safe between tags and in quoted attributes.
 *
 * @param text any text; file names hold what they like
 * @returns the text with the five signs of markup named; control characters become spaces, halves of surrogate pairs U+FFFD
 *
 * Source: HTML Living Standard, 13.1.2.3 and 13.1.4; Unicode, D76 (surrogates).
 */
export function markupText(text: string): string {
  return text
    .replace(/\p{Cs}/gu, '\u{FFFD}')
    .replace(/\p{Cc}+/gu, ' ')
    .replace(/[&<>"']/g, (sign) => ENTITIES[sign] as string);
}
