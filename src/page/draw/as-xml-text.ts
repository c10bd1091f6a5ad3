/**
 * @param text any text
 * @returns the text as the content of an XML element
 *
 * Source: XML 1.0, 2.4.
 */
export function asXmlText(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
