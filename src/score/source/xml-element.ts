/** No number in a score is larger; beyond it, sums and products of numbers stop being numbers. */
const LARGEST_NUMBER = 1e9;

/** One element of a parsed document: children in document order, own character data joined and trimmed. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly XmlElement[];
  readonly text: string;
}

/**
 * @param element parent
 * @param name element name
 * @returns the first child of that name, undefined when there is none
 */
export function childNamed(element: XmlElement, name: string): XmlElement | undefined {
  for (const child of element.children) if (child.name === name) return child;
  return undefined;
}

/**
 * @param element parent
 * @param name element name
 * @returns all children of that name in document order
 */
export function childrenNamed(element: XmlElement, name: string): XmlElement[] {
  return element.children.filter((child) => child.name === name);
}

/**
 * @param element parent
 * @param name element name
 * @returns text of the first child of that name, '' when there is none
 */
export function childText(element: XmlElement, name: string): string {
  return childNamed(element, name)?.text ?? '';
}

/**
 * @param element parent
 * @param name element name
 * @returns number in the first child of that name, null when there is none or it is no number a score can mean
 */
export function childNumber(element: XmlElement, name: string): number | null {
  const text = childText(element, name);
  const value = text === '' ? Number.NaN : Number(text);
  return Math.abs(value) <= LARGEST_NUMBER ? value : null;
}
