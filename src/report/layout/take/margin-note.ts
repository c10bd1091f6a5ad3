import type { Item, PageMarks } from '../drawing.js';
import { placeText, type SetText, type TextStyle } from '../set-text.js';
import type { Sheet } from '../sheet.js';
import { MARGIN_COLUMN, MARGIN_GAP, STYLES } from '../styles.js';

/** A paragraph of an entry. */
export interface Paragraph {
  readonly tag: 'H3' | 'P';
  readonly text: string;
  readonly style: TextStyle;
  /** points of white before it */
  readonly before?: number;
}

/** An entry: a place in the margin column, text beside it. */
export interface Entry {
  readonly margin: string;
  readonly marginNote?: string;
  /** a large number before the place */
  readonly numeral?: string;
  readonly paragraphs: readonly Paragraph[];
}

/**
 * Draws an entry at the current height. It is kept on one page when a page can hold it.
 *
 * @param sheet pages being filled
 * @param entry what stands in the margin and beside it
 *
 * Source: definition.
 */
export function drawEntry(sheet: Sheet, entry: Entry): void {
  const left = sheet.left + MARGIN_COLUMN + MARGIN_GAP;
  const width = sheet.width - MARGIN_COLUMN - MARGIN_GAP;
  sheet.ensure(Math.min(entryHeight(sheet, entry), sheet.fullHeight));
  const page = sheet.page;
  const margin = setMargin(sheet, entry, sheet.y);
  const first = sheet.elements.length;
  for (const { tag, text, style, before } of entry.paragraphs) {
    sheet.space(before ?? 0);
    sheet.write(tag, text, style, left, width);
  }
  readMarginFirst(sheet, first, { page, items: margin.items });
  if (sheet.page === page) sheet.y = Math.max(sheet.y, margin.bottom);
}

/** The place is read as part of the entry's first paragraph or heading, before its words. */
function readMarginFirst(sheet: Sheet, first: number, marks: PageMarks): void {
  const element = sheet.elements[first];
  if (element !== undefined) sheet.elements[first] = { ...element, children: [marks, ...element.children] };
}

/**
 * @param sheet for widths
 * @param entry what stands in the margin and beside it
 * @returns points the entry takes
 *
 * Source: definition.
 */
export function entryHeight(sheet: Sheet, entry: Entry): number {
  const width = sheet.width - MARGIN_COLUMN - MARGIN_GAP;
  const text = entry.paragraphs.reduce(
    (sum, { text: words, style, before }) => sum + (before ?? 0) + sheet.set(words, style, width).height,
    0,
  );
  return Math.max(text, setMargin(sheet, entry, 0).bottom);
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
