import { InputError, printable } from '../../base/index.js';
import { childNamed, childrenNamed, childText, type XmlElement } from './xml-element.js';

/** Letters of a part's name that are kept: a line of a page. */
const LONGEST_NAME = 100;

/** One part of the document: its name and its bars, whichever way the document is ordered. */
export interface PartSource {
  readonly id: string;
  readonly name: string;
  /** elements that carry the attributes of `measure` and the music of this part */
  readonly measures: readonly XmlElement[];
}

/**
 * @param root `score-partwise` or `score-timewise`
 * @param wanted id, name or 1-based number of a part; undefined: the first part with notes
 * @returns that part
 * @throws InputError `not-musicxml` for another document, `score-without-notes` when no part has a note to play,
 *   `bad-option` when the wanted part is not there
 *
 * Source: MusicXML 4.0, `score-partwise`, `score-timewise`, `part-list`.
 */
export function choosePart(root: XmlElement, wanted: string | undefined): PartSource {
  if (root.name !== 'score-partwise' && root.name !== 'score-timewise') {
    throw new InputError('score-other-document', { root: root.name });
  }
  const parts = partsOf(root);
  if (wanted !== undefined) return partNamed(parts, wanted);
  const withNotes = parts.find(hasNotes);
  if (withNotes === undefined) throw new InputError('score-without-part');
  return withNotes;
}

function partNamed(parts: readonly PartSource[], wanted: string): PartSource {
  const sought = wanted.trim().toLowerCase();
  const found =
    parts.find((part) => part.id.toLowerCase() === sought) ??
    parts.find((part) => part.name.toLowerCase() === sought) ??
    (/^\d+$/.test(sought) ? parts[Number(sought) - 1] : undefined);
  if (found !== undefined) return found;
  throw new InputError('part-not-there', { wanted, parts: parts.map((part) => part.name) });
}

function partsOf(root: XmlElement): PartSource[] {
  const names = partNames(root);
  const measures = root.name === 'score-timewise' ? timewiseMeasures(root) : partwiseMeasures(root);
  return [...measures].map(([id, list]) => ({
    id,
    name: names.get(id) || printable(id.slice(0, LONGEST_NAME)),
    measures: list,
  }));
}

function partNames(root: XmlElement): Map<string, string> {
  const list = childNamed(root, 'part-list');
  const names = new Map<string, string>();
  for (const part of list === undefined ? [] : childrenNamed(list, 'score-part')) {
    const name = printable(childText(part, 'part-name').replace(/\s+/g, ' ').slice(0, LONGEST_NAME));
    names.set(part.attributes.id ?? '', name);
  }
  return names;
}

function partwiseMeasures(root: XmlElement): Map<string, XmlElement[]> {
  return new Map(childrenNamed(root, 'part').map((part) => [part.attributes.id ?? '', childrenNamed(part, 'measure')]));
}

function timewiseMeasures(root: XmlElement): Map<string, XmlElement[]> {
  const parts = new Map<string, XmlElement[]>();
  for (const measure of childrenNamed(root, 'measure')) {
    for (const part of childrenNamed(measure, 'part')) {
      const id = part.attributes.id ?? '';
      const list = parts.get(id) ?? [];
      list.push({ ...part, name: 'measure', attributes: measure.attributes });
      parts.set(id, list);
    }
  }
  return parts;
}

function hasNotes(part: PartSource): boolean {
  return part.measures.some((measure) =>
    measure.children.some((note) => note.name === 'note' && childNamed(note, 'pitch') && !childNamed(note, 'cue')),
  );
}
