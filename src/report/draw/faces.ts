import { createRequire } from 'node:module';
import type { Face } from '../layout/drawing.js';
import { loadPdfKit } from './pdf-kit.js';

/** The part of an opened font that is used here. */
export interface OpenFont {
  readonly postscriptName: string;
  readonly unitsPerEm: number;
  /** glyphs handed out so far, by number */
  _glyphs: Record<number, unknown>;
  hasGlyphForCodePoint(codePoint: number): boolean;
  glyphForCodePoint(codePoint: number): OpenGlyph;
  layout(text: string): { readonly advanceWidth: number; readonly glyphs: readonly OpenGlyph[] };
  /** the file */
  readonly stream: { readonly buffer: Buffer };
  /** where its tables are */
  readonly directory: {
    readonly tables: Readonly<Record<string, { readonly offset: number; readonly length: number }>>;
  };
}

/** The part of a glyph that is used here. */
export interface OpenGlyph {
  readonly id: number;
  /** units of the face */
  readonly advanceWidth: number;
  /** y upwards */
  readonly path: { toSVG(): string };
}

const require = createRequire(import.meta.url);

const FILES: Readonly<Record<Face, string>> = {
  regular: '@expo-google-fonts/source-serif-4/400Regular/SourceSerif4_400Regular.ttf',
  semibold: '@expo-google-fonts/source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf',
  italic: '@expo-google-fonts/source-serif-4/400Regular_Italic/SourceSerif4_400Regular_Italic.ttf',
  music: '@vexflow-fonts/bravura/bravura.otf',
};

let opened: Readonly<Record<Face, OpenFont>> | undefined;

/**
 * Opens the faces once a process: Source Serif 4 and Bravura, both under the SIL Open Font License. An opened font
 * remembers the glyphs it has handed out, and with them the characters they stood for; what one document leaves there
 * would change the text of the next, so the memory is emptied first.
 *
 * @returns the four faces, remembering nothing
 *
 * Source: definition.
 */
export function openFaces(): Readonly<Record<Face, OpenFont>> {
  opened ??= {
    regular: openFace('regular'),
    semibold: openFace('semibold'),
    italic: openFace('italic'),
    music: openFace('music'),
  };
  for (const face of Object.values(opened)) face._glyphs = {};
  return opened;
}

/** PDFKit opens the font and hands out what it embeds from. */
function openFace(face: Face): OpenFont {
  const options = { font: require.resolve(FILES[face]), autoFirstPage: false };
  const PDFDocument = loadPdfKit();
  const holder = new PDFDocument(options) as unknown as { _font: { font: OpenFont } };
  return holder._font.font;
}
