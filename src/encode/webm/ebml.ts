/** A part of a file: its bytes, in as many pieces as it was put together from. */
export type Bytes = readonly Uint8Array[];

/**
 * @param id of the element, with its length marker, as the tables of the standard print it
 * @param content of the element
 * @returns the element
 *
 * Source: RFC 8794 (EBML): id, then the length in eight bytes or one, then the content.
 */
export function element(id: number, ...content: readonly (Uint8Array | Bytes)[]): Bytes {
  const pieces = content.flatMap((one) => (one instanceof Uint8Array ? [one] : one));
  return [Uint8Array.of(...bigEndian(id), ...lengthBytes(lengthOf(pieces))), ...pieces];
}

/**
 * @param id of the element
 * @param value whole and not negative
 * @param bytes how many it takes; as few as hold it when it is left out
 * @returns an element that holds the number
 */
export function unsigned(id: number, value: number, bytes?: number): Bytes {
  const least = bigEndian(value);
  return element(id, Uint8Array.from([...new Array(Math.max(0, (bytes ?? 0) - least.length)).fill(0), ...least]));
}

/**
 * @param id of the element
 * @param value below 2^31 in size
 * @returns an element that holds the number, in four bytes
 */
export function signed(id: number, value: number): Bytes {
  const bytes = new Uint8Array(4);
  new DataView(bytes.buffer).setInt32(0, value);
  return element(id, bytes);
}

/**
 * @param id of the element
 * @param value any number
 * @returns an element that holds the number, in eight bytes
 */
export function float(id: number, value: number): Bytes {
  const bytes = new Uint8Array(8);
  new DataView(bytes.buffer).setFloat64(0, value);
  return element(id, bytes);
}

/**
 * @param id of the element
 * @param value signs of ASCII
 * @returns an element that holds the text
 */
export function text(id: number, value: string): Bytes {
  return element(id, new TextEncoder().encode(value));
}

/**
 * @param bytes a part of a file
 * @returns how many bytes it is long
 */
export function lengthOf(bytes: Bytes): number {
  return bytes.reduce((sum, { length }) => sum + length, 0);
}

/** As few bytes as hold the number, at least one. */
function bigEndian(value: number): number[] {
  const bytes: number[] = [];
  for (let rest = value; rest > 0 || bytes.length === 0; rest = Math.floor(rest / 256)) bytes.unshift(rest % 256);
  return bytes;
}

/** Short lengths in one byte, all others in eight, so that they need not be known to know how many bytes they take. */
function lengthBytes(length: number): number[] {
  if (length < 0x7f) return [0x80 | length];
  const bytes = bigEndian(length);
  return [0x01, ...new Array(7 - bytes.length).fill(0), ...bytes];
}
