/**
 * @param document any result document
 * @returns its JSON text, indented, with a line break at the end
 *
 * Source: RFC 8259.
 */
export function toJson(document: object): string {
  return `${JSON.stringify(document, null, 2)}\n`;
}
