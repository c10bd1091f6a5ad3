import { parseXml } from './parse-xml.js';
import { scoreText } from './score-text.js';
import type { XmlElement } from './xml-element.js';

const read = new WeakMap<Uint8Array, XmlElement>();

/**
 * The document in a score's file. A file is read for its part and for its engraving; what was read is remembered as long as
 * the bytes are at hand.
 *
 * @param bytes whole file, which nobody writes to any more
 * @returns the root element
 * @throws InputError as `scoreText` and `parseXml`
 */
export function documentIn(bytes: Uint8Array): XmlElement {
  const known = read.get(bytes);
  if (known !== undefined) return known;
  const root = parseXml(scoreText(bytes));
  read.set(bytes, root);
  return root;
}
