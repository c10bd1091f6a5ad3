import type { Language } from '../base/index.js';
import type { Drawing, DrawingElement, Item, PageMarks, Typesetter } from './drawing.js';
import { placeText, type SetText, setOneLine, setText, type TextStyle } from './set-text.js';
import { STYLES } from './styles.js';

/** Paper a report can be printed on. */
export type PaperSize = 'a4' | 'letter';

/** Width and height in points. Source: ISO 216 (210 × 297 mm); ANSI/ASME Y14.1 (8.5 × 11 in). */
const PAPER: Record<PaperSize, readonly [number, number]> = { a4: [595.28, 841.89], letter: [612, 792] };

const MARGIN_SIDE = 54;
const MARGIN_TOP = 46;
const MARGIN_FOOT = 52;
const FOOT_LINE_FROM_EDGE = 30;

/** What a sheet is made for. */
export interface SheetOptions {
  readonly typesetter: Typesetter;
  readonly paper: PaperSize;
  readonly landscape?: boolean;
  /** points between the margins, where it is not what the paper leaves */
  readonly width?: number;
  /** English when it is left out */
  readonly language?: Language | undefined;
  /** document title */
  readonly title: string;
  /** stands at the foot of every page before the page number */
  readonly foot: string;
  /** points to leave at the foot of one page until `fillPage`, so that what would fill it goes on with what comes last */
  readonly leave?: { readonly page: number; readonly height: number };
}

/**
 * The pages being filled from top to bottom. Whoever draws asks for room first, then draws at `y` on `page` and moves on.
 */
export class Sheet {
  readonly typesetter: Typesetter;
  readonly language: Language;
  readonly left = MARGIN_SIDE;
  readonly width: number;
  readonly pageWidth: number;
  readonly pageHeight: number;
  page = 0;
  y = MARGIN_TOP;
  readonly elements: DrawingElement[] = [];
  readonly artifacts: PageMarks[] = [];
  #lettersMissing = '';
  #leave: SheetOptions['leave'];
  readonly #options: SheetOptions;

  constructor(options: SheetOptions) {
    const [short, long] = PAPER[options.paper];
    this.typesetter = options.typesetter;
    this.language = options.language ?? 'en';
    this.pageWidth = options.landscape === true ? long : short;
    this.pageHeight = options.landscape === true ? short : long;
    this.width = options.width ?? this.pageWidth - 2 * MARGIN_SIDE;
    this.#leave = options.leave;
    this.#options = options;
  }

  /** Points left on this page. */
  get room(): number {
    const left = this.#leave?.page === this.page ? this.#leave.height : 0;
    return this.pageHeight - MARGIN_FOOT - this.y - left;
  }

  /** From now on pages are filled to their foot. */
  fillPage(): void {
    this.#leave = undefined;
  }

  /** Letters so far that could not be drawn. */
  get lettersMissing(): string {
    return this.#lettersMissing;
  }

  /** Points a fresh page offers. */
  get fullHeight(): number {
    return this.pageHeight - MARGIN_FOOT - MARGIN_TOP;
  }

  /** Breaks the page when fewer than `height` points are left; tells whether it did. */
  ensure(height: number): boolean {
    if (height <= this.room || this.y === MARGIN_TOP) return false;
    this.page += 1;
    this.y = MARGIN_TOP;
    return true;
  }

  /** Leaves white space, but none at the top of a page. */
  space(points: number): void {
    if (this.y > MARGIN_TOP) this.y += Math.min(points, Math.max(0, this.room));
  }

  /** Sets text to be placed later. */
  set(text: string, style: TextStyle, width: number): SetText {
    const set = setText(this.typesetter, text, style, width);
    this.#lettersMissing += set.missing;
    return set;
  }

  /** An element of placed text. */
  element(tag: DrawingElement['tag'], set: SetText, x: number, top: number): DrawingElement {
    return {
      tag,
      ...(set.actualText === undefined ? {} : { actualText: set.actualText }),
      children: [{ page: this.page, items: placeText(set, x, top) }],
    };
  }

  /** Text over the whole width at the current height, a line at a time over pages. */
  write(tag: DrawingElement['tag'], text: string, style: TextStyle, x = this.left, width = this.width): void {
    const set = this.set(text, style, width);
    const marks: PageMarks[] = [];
    for (const line of set.lines) {
      this.ensure(style.leading);
      marks.push({ page: this.page, items: placeText({ ...set, lines: [line] }, x, this.y) });
      this.y += style.leading;
    }
    this.elements.push({
      tag,
      ...(set.actualText === undefined ? {} : { actualText: set.actualText }),
      children: marks,
    });
  }

  /** Furniture: drawn, but no part of the text. */
  furnish(items: readonly Item[]): void {
    this.artifacts.push({ page: this.page, items });
  }

  /** The whole document, with its feet. */
  finish(): Drawing {
    const pages = this.page + 1;
    const feet = Array.from({ length: pages }, (_, page) => ({ page, items: this.#foot(page, pages) }));
    return {
      title: this.#options.title,
      language: this.language,
      pageWidth: this.pageWidth,
      pageHeight: this.pageHeight,
      pages,
      root: { tag: 'Document', children: this.elements },
      artifacts: [...this.artifacts, ...feet],
    };
  }

  #foot(page: number, pages: number): Item[] {
    const top = this.pageHeight - FOOT_LINE_FROM_EDGE - STYLES.foot.leading;
    const number = setText(this.typesetter, `${page + 1} / ${pages}`, { ...STYLES.foot, align: 'right' }, this.width);
    const name = setOneLine(this.typesetter, this.#options.foot, STYLES.foot, this.width - 60);
    return [...placeText(name, this.left, top), ...placeText(number, this.left, top)];
  }
}
