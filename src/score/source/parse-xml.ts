import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { InputError, printable } from '../../base/index.js';
import type { XmlElement } from './xml-element.js';

/** MusicXML needs about 12 levels. */
const DEEPEST_NESTING = 100;
const NO_ATTRIBUTES: Readonly<Record<string, string>> = {};

const parser = new XMLParser({
  preserveOrder: true,
  ignoreAttributes: false,
  attributeNamePrefix: '',
  parseTagValue: false,
  parseAttributeValue: false,
  processEntities: false,
  ignoreDeclaration: true,
  ignorePiTags: true,
  jPath: false,
  maxNestedTags: DEEPEST_NESTING,
});

/**
 * Untrusted XML to a tree. Document types are never fetched and may define nothing; entities other than the five of XML
 * and character references stay as they are written. Characters that XML does not allow or advises against are replaced.
 *
 * @param text XML document
 * @returns the root element
 * @throws InputError `not-musicxml` when it is not well formed (with the line), `score-refused` when it brings its own
 *   definitions or nests too deep
 *
 * Source: XML 1.0 (Fifth Edition), sections 2.8 and 4.6.
 */
export function parseXml(text: string): XmlElement {
  const plain = withoutDocumentType(text.replace(NO_CHARACTERS, '\ufffd'));
  const valid = XMLValidator.validate(plain);
  if (valid !== true) {
    const { line, msg } = valid.err;
    throw new InputError('score-not-well-formed', { line, said: oneLine(msg) });
  }
  const roots = asElements(parsed(plain));
  const root = roots[0];
  if (root === undefined) throw new InputError('score-without-element');
  return root;
}

type RawNode = Record<string, unknown>;

function parsed(text: string): RawNode[] {
  try {
    return parser.parse(text) as RawNode[];
  } catch (error) {
    const reason = error instanceof Error ? oneLine(error.message) : 'unknown reason';
    if (/reserved/i.test(reason)) {
      throw new InputError('score-unsafe-name');
    }
    if (/nested/i.test(reason)) {
      throw new InputError('score-nests-deep', { deepest: DEEPEST_NESTING });
    }
    throw new InputError('score-xml-unread', { said: reason });
  }
}

function oneLine(message: string): string {
  return message.replace(/\s+/g, ' ').slice(0, 200);
}

/** Blanks out a plain document type declaration, keeping the lines; refuses one that defines anything, and a second one. */
function withoutDocumentType(text: string): string {
  const start = text.indexOf('<!DOCTYPE');
  if (start < 0) return text;
  const declaration = /^<!DOCTYPE(?:[^[\]<>"']|"[^"]*"|'[^']*')*>/.exec(text.slice(start, start + 4096))?.[0];
  const plain = declaration === undefined ? '' : declaration.replace(/[^\n]/g, ' ');
  const end = start + plain.length;
  if (plain === '' || text.includes('<!DOCTYPE', end)) {
    throw new InputError('score-defines-types');
  }
  return text.slice(0, start) + plain + text.slice(end);
}

function asElements(nodes: readonly RawNode[]): XmlElement[] {
  const elements: XmlElement[] = [];
  for (const node of nodes) {
    for (const name in node) {
      if (name === ':@' || name === '#text') continue;
      elements.push(asElement(name, node[name] as RawNode[], node[':@'] as Record<string, string> | undefined));
    }
  }
  return elements;
}

function asElement(
  name: string,
  content: readonly RawNode[],
  attributes: Record<string, string> | undefined,
): XmlElement {
  let text = '';
  for (const node of content) if (typeof node['#text'] === 'string') text += node['#text'];
  return {
    name,
    attributes: attributes === undefined ? NO_ATTRIBUTES : decodedAttributes(attributes),
    children: asElements(content),
    text: decodeReferences(text).trim(),
  };
}

function decodedAttributes(attributes: Record<string, string>): Record<string, string> {
  for (const name in attributes) attributes[name] = printable(decodeReferences(String(attributes[name])));
  return attributes;
}

/** What no XML document may or should hold. Source: XML 1.0 (Fifth Edition), section 2.2, Char and the note on it. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const NO_CHARACTERS = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u0084\u0086-\u009f\ufffe\uffff]|\p{Cs}/gu;

const NAMED: ReadonlyMap<string, string> = new Map([
  ['amp', '&'],
  ['lt', '<'],
  ['gt', '>'],
  ['quot', '"'],
  ['apos', "'"],
]);

function decodeReferences(text: string): string {
  if (!text.includes('&')) return text;
  return text.replace(/&(?:#(\d{1,7})|#x([0-9A-Fa-f]{1,6})|([a-z]{2,4}));/g, (whole, decimal, hex, name) => {
    if (name !== undefined) return NAMED.get(name) ?? whole;
    const code = decimal === undefined ? Number.parseInt(hex, 16) : Number(decimal);
    return code > 0x10ffff ? whole : String.fromCodePoint(code).replace(NO_CHARACTERS, '\ufffd');
  });
}
