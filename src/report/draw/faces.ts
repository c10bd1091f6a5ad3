import { createRequire } from 'node:module';
import PDFDocument from 'pdfkit';
import type { Face } from '../layout/drawing.js';

/** The part of an opened font that is used here. */
export interface OpenFont {
  readonly postscriptName: string;
  readonly unitsPerEm: number;
  hasGlyphForCodePoint(codePoint: number): boolean;
  layout(text: string): { readonly advanceWidth: number };
}

const require = createRequire(import.meta.url);

const FILES: Readonly<Record<Face, string>> = {
  regular: '@expo-google-fonts/source-serif-4/400Regular/SourceSerif4_400Regular.ttf',
  semibold: '@expo-google-fonts/source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf',
  italic: '@expo-google-fonts/source-serif-4/400Regular_Italic/SourceSerif4_400Regular_Italic.ttf',
  music: '@vexflow-fonts/bravura/bravura.otf',
};

/**
 * Opens the faces: Source Serif 4 and Bravura, both under the SIL Open Font License. Each document needs faces of its
 * own: an opened font remembers glyphs from embedding them, and what one document remembers would change the next.
 *
 * @returns the four faces, freshly opened
 *
 * Source: definition.
 */
export function openFaces(): Readonly<Record<Face, OpenFont>> {
  return {
    regular: openFace('regular'),
    semibold: openFace('semibold'),
    italic: openFace('italic'),
    music: openFace('music'),
  };
}

/** PDFKit opens the font and hands out what it embeds from. */
function openFace(face: Face): OpenFont {
  const options = { font: require.resolve(FILES[face]), autoFirstPage: false };
  const holder = new PDFDocument(options) as unknown as { _font: { font: OpenFont } };
  return holder._font.font;
}
