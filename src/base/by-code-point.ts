/**
 * Orders text by Unicode code point, so that the order is the same on every machine and in every language setting.
 *
 * @param a any text
 * @param b any text
 * @returns below 0 when `a` comes first, above 0 when `b` does, 0 when they are equal
 *
 * Source: UTF-8 keeps code point order bytewise (RFC 3629, section 1).
 */
export function byCodePoint(a: string, b: string): number {
  return Buffer.compare(Buffer.from(a), Buffer.from(b));
}
