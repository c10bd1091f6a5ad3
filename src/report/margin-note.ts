import { shifted } from '../engrave/index.js';
import {
  type DrawingElement,
  type Item,
  type Link,
  linked,
  MARGIN_COLUMN,
  MARGIN_GAP,
  type PageMarks,
  placeText,
  type SetText,
  type Sheet,
  STYLES,
  type TextStyle,
  widthWithoutLonelyWord,
} from '../page/index.js';

/** A paragraph of an entry. */
export interface Paragraph {
  readonly tag: 'H3' | 'P';
  readonly text: string;
  readonly style: TextStyle;
  /** points of white before it */
  readonly before?: number;
}

/** A picture between the paragraphs of an entry, lengths in points from its upper left corner. */
export interface EntryFigure {
  readonly tag: 'Figure';
  readonly items: readonly Item[];
  readonly width: number;
  readonly height: number;
  readonly alternative: string;
  /** stands in the margin beside it */
  readonly caption: string;
  /** points of white before and after it */
  readonly before: number;
  readonly after: number;
}

/** An entry: a place in the margin column, text beside it. */
export interface Entry {
  readonly margin: string;
  readonly marginNote?: string;
  /** a large number before the place */
  readonly numeral?: string;
  /** where the place leads */
  readonly link?: Link;
  readonly paragraphs: readonly (Paragraph | EntryFigure)[];
}

/** White between the place in the margin and a caption, points. */
const CAPTION_GAP = 4;

/**
 * Draws an entry at the current height. It is kept on one page when a page can hold it.
 *
 * @param sheet pages being filled
 * @param entry what stands in the margin and beside it
 */
export function drawEntry(sheet: Sheet, entry: Entry): void {
  const left = sheet.left + MARGIN_COLUMN + MARGIN_GAP;
  const width = sheet.width - MARGIN_COLUMN - MARGIN_GAP;
  sheet.ensure(Math.min(entryHeight(sheet, entry), sheet.fullHeight));
  const page = sheet.page;
  const top = sheet.y;
  const margin = setMargin(sheet, entry, top);
  const first = sheet.elements.length;
  let bottom = margin.bottom;
  for (const paragraph of entry.paragraphs) {
    sheet.space(paragraph.before ?? 0);
    if (paragraph.tag === 'Figure') bottom = drawFigure(sheet, paragraph, left, sheet.page === page ? bottom : 0);
    else {
      const { tag, text, style } = paragraph;
      sheet.write(tag, text, style, left, widthWithoutLonelyWord(sheet, text, style, width));
    }
  }
  const box = [sheet.left, top, sheet.left + MARGIN_COLUMN, margin.bottom] as const;
  readMarginFirst(sheet, first, linked({ page, items: margin.items }, entry.link, box));
  if (sheet.page === page) sheet.y = Math.max(sheet.y, bottom);
}

/** Draws the picture, and its caption in the margin below what stands there; gives the caption's lower edge. */
function drawFigure(sheet: Sheet, figure: EntryFigure, left: number, marginBottom: number): number {
  const { items, width, height, alternative, caption, after } = figure;
  sheet.ensure(Math.min(height, sheet.fullHeight));
  sheet.elements.push({
    tag: 'Figure',
    alternative,
    box: [left, sheet.y, left + width, sheet.y + height],
    children: [{ page: sheet.page, items: shifted(items, left, sheet.y) }],
  });
  const set = sheet.set(caption, STYLES.caption, MARGIN_COLUMN);
  const top = Math.max(sheet.y, marginBottom + CAPTION_GAP);
  sheet.elements.push(sheet.element('P', set, sheet.left, top));
  sheet.y += height;
  sheet.space(after);
  return top + set.height;
}

/** The place is read as part of the entry's first paragraph or heading, before its words. */
function readMarginFirst(sheet: Sheet, first: number, marks: DrawingElement | PageMarks): void {
  const element = sheet.elements[first];
  if (element !== undefined) sheet.elements[first] = { ...element, children: [marks, ...element.children] };
}

/**
 * @param sheet for widths
 * @param entry what stands in the margin and beside it
 * @returns points the entry takes
 */
export function entryHeight(sheet: Sheet, entry: Entry): number {
  const width = sheet.width - MARGIN_COLUMN - MARGIN_GAP;
  let margin = setMargin(sheet, entry, 0).bottom;
  let text = 0;
  for (const one of entry.paragraphs) {
    text += one.before ?? 0;
    if (one.tag === 'Figure') {
      const caption = sheet.set(one.caption, STYLES.caption, MARGIN_COLUMN).height;
      margin = Math.max(text, margin + CAPTION_GAP) + caption;
      text += one.height + one.after;
    } else text += sheet.set(one.text, one.style, width).height;
  }
  return Math.max(text, margin);
}

/** Numeral, place and note under each other; each ends in a space, so that they read on. */
function setMargin(sheet: Sheet, entry: Entry, top: number): { items: Item[]; bottom: number } {
  const items: Item[] = [];
  const place = (set: SetText, y: number) => {
    items.push(
      ...placeText(set, sheet.left, y).map((item, i, all) =>
        i === all.length - 1 ? { ...item, text: `${item.text} ` } : item,
      ),
    );
    return y + set.height;
  };
  let y = top + 1.5;
  if (entry.numeral !== undefined) {
    place(sheet.set(entry.numeral, STYLES.numeral, MARGIN_COLUMN), top - 4);
    y = top + STYLES.numeral.leading;
  }
  y = place(sheet.set(entry.margin, STYLES.margin, MARGIN_COLUMN), y);
  if (entry.marginNote !== undefined) {
    y = place(sheet.set(entry.marginNote, { ...STYLES.margin, face: 'italic', ink: 'soft' }, MARGIN_COLUMN), y);
  }
  return { items, bottom: y };
}
