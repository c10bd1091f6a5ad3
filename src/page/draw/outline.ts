import type { DrawingElement, PageMarks, TextItem } from '../drawing.js';

/** One entry of a document's outline. */
export interface Bookmark {
  readonly text: string;
  /** 0-based */
  readonly page: number;
  /** points from the upper edge of the page */
  readonly top: number;
  readonly children: readonly Bookmark[];
}

/** White left above a heading that is jumped to, points. */
const ABOVE = 8;

/**
 * The headings of a document as its outline, each under the heading of the level above it.
 *
 * @param root the document's structure
 * @returns bookmarks in reading order
 *
 * Source: ISO 32000-1, 12.3.3; ISO 14289-1, 7.17 (an outline that follows the headings).
 */
export function outlineOf(root: DrawingElement): Bookmark[] {
  return nested(headingsIn(root), 0);
}

interface Heading extends Omit<Bookmark, 'children'> {
  readonly level: number;
}

function headingsIn(element: DrawingElement): Heading[] {
  const level = Number(/^H(\d)$/.exec(element.tag)?.[1]);
  const [first] = marksIn(element);
  const own = level > 0 && first !== undefined ? [{ level, ...placeOf(element, first) }] : [];
  return [...own, ...element.children.flatMap((child) => ('tag' in child ? headingsIn(child) : []))];
}

/** What is drawn of an element, links in it included. */
function marksIn({ children }: DrawingElement): PageMarks[] {
  return children.flatMap((child) => {
    if (!('tag' in child)) return [child];
    return child.tag === 'Link' ? marksIn(child) : [];
  });
}

function placeOf(element: DrawingElement, { page }: PageMarks): Omit<Bookmark, 'children'> {
  const texts = marksIn(element)
    .flatMap(({ items }) => items)
    .filter(isText);
  const text = element.actualText ?? texts.map((item) => item.text).join('');
  const top = Math.min(...texts.map(({ baseline, size }) => baseline - size));
  return { text: text.replace(/\s+/g, ' ').trim(), page, top: Math.max(0, top - ABOVE) };
}

const isText = (item: PageMarks['items'][number]): item is TextItem => item.kind === 'text';

function nested(headings: readonly Heading[], above: number): Bookmark[] {
  const [first, ...rest] = headings;
  if (first === undefined || first.level <= above) return [];
  const end = rest.findIndex(({ level }) => level <= first.level);
  const inside = end < 0 ? rest : rest.slice(0, end);
  const { level, ...place } = first;
  return [{ ...place, children: nested(inside, level) }, ...(end < 0 ? [] : nested(rest.slice(end), above))];
}
