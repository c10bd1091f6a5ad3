import type { XmlElement } from './xml-element.js';

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/**
 * @param element any element, its children and its text
 * @returns the element as XML text without a declaration
 *
 * Source: XML 1.0 (Fifth Edition), sections 2.4 and 3.1.
 */
export function writeXml(element: XmlElement): string {
  const attributes = Object.entries(element.attributes).map(([name, value]) => ` ${name}="${escaped(value)}"`);
  const opening = `${element.name}${attributes.join('')}`;
  const content = `${escaped(element.text)}${element.children.map(writeXml).join('')}`;
  return content === '' ? `<${opening}/>` : `<${opening}>${content}</${element.name}>`;
}

/** Control characters that XML 1.0 forbids are left out. */
function escaped(text: string): string {
  return text
    .replace(/[\p{Cc}\p{Cs}\uFFFE\uFFFF]/gu, (character) => (/[\t\n\r]/.test(character) ? character : ''))
    .replace(/[&<>"]/g, (character) => ESCAPES[character] ?? character);
}
