import type { Language } from '../base/index.js';
import type { Path } from './path/path.js';

/** The faces a page is set in. `music` holds the signs that text faces lack: ♭ ♯ ♮, dynamics, fermatas. */
export type Face = 'regular' | 'semibold' | 'italic' | 'music';

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
type StructureTag = 'Document' | 'Sect' | 'H1' | 'H2' | 'H3' | 'P' | 'Table' | 'TR' | 'TH' | 'TD' | 'Figure';

/** One element of the document's structure, children in reading order. */
export interface DrawingElement {
  readonly tag: StructureTag;
  /** text that stands for a figure */
  readonly alternative?: string;
  /** the true text where a sign could not be drawn */
  readonly actualText?: string;
  /** of a TH */
  readonly scope?: 'Row' | 'Column';
  /** left, top, right, bottom of a figure on its page */
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
  /** what stands for letters of one kind that no face holds, e.g. `[Chinese letters]` */
  nameMissing(letters: string): string;
}
