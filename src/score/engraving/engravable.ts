import type { XmlElement } from '../source/xml-element.js';

/** Elements whose number says how much is drawn, with the largest that is given on to an engraver. */
const LARGEST: ReadonlyMap<string, number> = new Map([
  ['staves', 4],
  ['staff', 4],
  ['staff-lines', 12],
  ['staff-size', 400],
  ['fifths', 12],
  ['cancel', 12],
  ['beats', 100],
  ['beat-type', 128],
  ['tremolo', 8],
  ['octave', 12],
  ['clef-octave-change', 4],
  ['octave-change', 4],
  ['key-octave', 12],
  ['line', 12],
  ['actual-notes', 100],
  ['normal-notes', 100],
]);
/** The largest number of any other element or attribute. */
const LARGEST_NUMBER = 1e6;
/** Letters of one text: a line of words is shorter. */
const LONGEST_TEXT = 200;
/** Elements of one name that may follow one another below one element other than a bar: dots, beams, articulations. */
const MOST_ALIKE = 16;

/**
 * What an engraver may be given of an element: what asks it to draw more than any part has is left out, as if it were not
 * written.
 *
 * @param element a child of a `measure`
 * @returns the element without numbers, texts and repetitions that are out of all measure; null when it is such a one itself
 *
 * Source: MusicXML 4.0 for the elements; the bounds are working values, well above what is printed.
 */
export function engravable(element: XmlElement): XmlElement | null {
  if (isTooLarge(element.name, element.text)) return null;
  const seen = new Map<string, number>();
  const children = element.children.flatMap((child) => {
    const alike = (seen.get(child.name) ?? 0) + 1;
    seen.set(child.name, alike);
    const kept = alike > MOST_ALIKE ? null : engravable(child);
    return kept === null ? [] : [kept];
  });
  const attributes = Object.entries(element.attributes).filter(([, value]) => !isTooLarge('', value));
  return {
    ...element,
    text: element.text.slice(0, LONGEST_TEXT),
    children,
    attributes: Object.fromEntries(attributes),
  };
}

function isTooLarge(name: string, text: string): boolean {
  const numbers = text.match(/[-+]?\d[\d.]*(?:e[-+]?\d+)?/gi) ?? [];
  return numbers.some((number) => Math.abs(Number(number)) > (LARGEST.get(name) ?? LARGEST_NUMBER));
}
