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

let opened: Readonly<Record<Face, OpenFont>> | undefined;

/**
 * Opens the faces once a process; every document embeds its own subsets of them.
 *
 * @returns the four faces: Source Serif 4 and Bravura, both under the SIL Open Font License
 *
 * Source: definition.
 */
export function openFaces(): Readonly<Record<Face, OpenFont>> {
  opened ??= {
    regular: openFace(require.resolve('@expo-google-fonts/source-serif-4/400Regular/SourceSerif4_400Regular.ttf')),
    semibold: openFace(require.resolve('@expo-google-fonts/source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf')),
    italic: openFace(
      require.resolve('@expo-google-fonts/source-serif-4/400Regular_Italic/SourceSerif4_400Regular_Italic.ttf'),
    ),
    music: openFace(require.resolve('@vexflow-fonts/bravura/bravura.otf')),
  };
  return opened;
}

/** PDFKit opens the file and hands out the font it embeds from. */
function openFace(path: string): OpenFont {
  const holder = new PDFDocument({ font: path, autoFirstPage: false }) as unknown as { _font: { font: OpenFont } };
  return holder._font.font;
}
