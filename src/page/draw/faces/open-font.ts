/** The part of an opened font that is used here. */
export interface OpenFont {
  readonly postscriptName: string;
  readonly unitsPerEm: number;
  /** glyphs handed out so far, by number */
  _glyphs: Record<number, unknown>;
  hasGlyphForCodePoint(codePoint: number): boolean;
  glyphForCodePoint(codePoint: number): OpenGlyph;
  layout(text: string, features?: unknown): GlyphRun;
  /** the file */
  readonly stream: { readonly buffer: Buffer };
  /** where its tables are */
  readonly directory: {
    readonly tables: Readonly<Record<string, { readonly offset: number; readonly length: number }>>;
  };
}

/** A word set in a face, units of the face. */
export interface GlyphRun {
  readonly advanceWidth: number;
  readonly glyphs: readonly OpenGlyph[];
  readonly positions: readonly object[];
}

/** The part of a glyph that is used here. */
export interface OpenGlyph {
  readonly id: number;
  /** units of the face */
  readonly advanceWidth: number;
  /** what it stands for; none for a part of a letter */
  readonly codePoints: readonly number[];
  /** y upwards */
  readonly path: { toSVG(): string };
}
