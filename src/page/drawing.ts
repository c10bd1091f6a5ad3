import type { Language } from '../base/index.js';
import type { Path } from './path/path.js';

/** The faces of all pages. `music` holds the signs that text faces lack: ♭ ♯ ♮, dynamics, fermatas. */
export type OwnFace = 'regular' | 'semibold' | 'italic' | 'music';

/** A face lent by a package for letters that the text faces lack: its weight and its slice. */
export type LentFace = `lent ${number} ${string}`;

/** The faces a page is set in. */
export type Face = OwnFace | LentFace;

/** The inks of a page: black, one accent, and their lighter tones. All stay apart in black and white. */
export type Ink = 'text' | 'soft' | 'accent' | 'rule' | 'tint';

/** Text in one face on one baseline. */
export interface TextItem {
  readonly kind: 'text';
  readonly x: number;
  readonly baseline: number;
  readonly text: string;
  readonly face: Face;
  readonly size: number;
  readonly ink: Ink;
}

/** A line, curve or area. */
export interface PathItem {
  readonly kind: 'path';
  readonly path: Path;
  readonly stroke?: Ink;
  readonly width?: number;
  readonly dash?: readonly [number, number];
  /** how the ends of a line look; round unless it says otherwise */
  readonly cap?: 'butt';
  readonly fill?: Ink;
}

/** Whatever is drawn. */
export type Item = TextItem | PathItem;

/** What is drawn on one page. */
export interface PageMarks {
  /** 0-based */
  readonly page: number;
  readonly items: readonly Item[];
}

/** Names of standard structure types, ISO 32000-1, 14.8.4. */
type StructureTag = 'Document' | 'Sect' | 'H1' | 'H2' | 'H3' | 'P' | 'Table' | 'TR' | 'TH' | 'TD' | 'Figure' | 'Link';

/** Where something drawn leads, and what that is in words. */
export interface Link {
  /** relative to the document, in signs of ASCII */
  readonly address: string;
  readonly alternative: string;
}

/** One element of the document's structure, children in reading order. */
export interface DrawingElement {
  readonly tag: StructureTag;
  /** text that stands for a figure */
  readonly alternative?: string;
  /** the true text where a sign could not be drawn, or where what is drawn does not read as it is written */
  readonly actualText?: string;
  /** of a TH */
  readonly scope?: 'Row' | 'Column';
  /** of a Link */
  readonly address?: string;
  /** left, top, right, bottom of a figure or a link on its page */
  readonly box?: readonly [number, number, number, number];
  readonly children: readonly (DrawingElement | PageMarks)[];
}

/** A whole document as plain data. Lengths are points (1/72 inch) from the top left corner of the page. */
export interface Drawing {
  readonly title: string;
  /** English when it is left out */
  readonly language?: Language;
  readonly pageWidth: number;
  readonly pageHeight: number;
  readonly pages: number;
  readonly root: DrawingElement;
  /** rules, page numbers and repeated table heads: no part of the text */
  readonly artifacts: readonly PageMarks[];
}

/** What layout must know of the faces. */
export interface Typesetter {
  /** width in points */
  widthOf(text: string, face: Face, size: number): number;
  hasGlyph(character: string, face: Face): boolean;
  /**
   * The face that a letter of a text is set in: the one wished for when it holds the letter, else one lent by a package,
   * else undefined.
   */
  faceFor(character: string, face: Face, text: string): Face | undefined;
  /** what stands for letters of one kind that no face holds, e.g. `[Tamil letters]` */
  nameMissing(letters: string): string;
}
