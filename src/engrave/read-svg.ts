import { XMLParser } from 'fast-xml-parser';

/** One element of an SVG document, its children in order; text stands as an element named `#text`. */
export interface SvgElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly SvgElement[];
  readonly text: string;
}

const parser = new XMLParser({
  preserveOrder: true,
  ignoreAttributes: false,
  attributeNamePrefix: '',
  parseTagValue: false,
  parseAttributeValue: false,
  trimValues: false,
  processEntities: true,
  ignoreDeclaration: true,
  maxNestedTags: 200,
});

/** White between tags that holds a line break is how the file is laid out, no text. */
const INDENTATION = />\s*\n\s*</g;

type RawNode = Record<string, unknown>;

/**
 * @param svg SVG text as the engraver makes it
 * @returns its root element
 *
 * Source: SVG 2; XML 1.0.
 */
export function readSvg(svg: string): SvgElement {
  return (
    elementsOf(parser.parse(svg.replace(INDENTATION, '><')) as RawNode[]).find(({ name }) => name === 'svg') ??
    element('svg', [], undefined)
  );
}

function elementsOf(nodes: readonly RawNode[]): SvgElement[] {
  return nodes.flatMap((node) => {
    if (typeof node['#text'] === 'string')
      return [{ name: '#text', attributes: {}, children: [], text: node['#text'] }];
    const name = Object.keys(node).find((key) => key !== ':@');
    if (name === undefined) return [];
    return [element(name, node[name] as RawNode[], node[':@'] as Record<string, string> | undefined)];
  });
}

function element(name: string, content: readonly RawNode[], attributes: Record<string, string> = {}): SvgElement {
  return { name, attributes, children: elementsOf(content), text: '' };
}
