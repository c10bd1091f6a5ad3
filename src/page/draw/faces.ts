import { createRequire } from 'node:module';
import type { Face } from '../drawing.js';
import { loadPdfKit } from './pdf-kit.js';

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
interface GlyphRun {
  readonly advanceWidth: number;
  readonly glyphs: readonly OpenGlyph[];
  readonly positions: readonly object[];
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

/** Words remembered for each face; a report has some hundreds. */
const MOST_WORDS = 20_000;

let opened: Readonly<Record<Face, OpenFont>> | undefined;

/**
 * Opens the faces once a process: Source Serif 4 and Bravura, both under the SIL Open Font License.
 *
 * @returns the four faces
 */
export function openFaces(): Readonly<Record<Face, OpenFont>> {
  opened ??= {
    regular: openFace('regular'),
    semibold: openFace('semibold'),
    italic: openFace('italic'),
    music: openFace('music'),
  };
  return opened;
}

/** PDFKit opens the font and hands out what it embeds from. */
function openFace(face: Face): OpenFont {
  const options = { font: require.resolve(FILES[face]), autoFirstPage: false };
  const PDFDocument = loadPdfKit();
  const holder = new PDFDocument(options) as unknown as { _font: { font: OpenFont } };
  return remembering(holder._font.font);
}

/**
 * Setting a word is most of the work of a page, and pages share their words. PDFKit scales the positions it is given in
 * place, so each caller gets its own. An opened font remembers the glyphs it has handed out, and with them the characters
 * they stood for; what one document leaves there would change the text of the next, so that memory is emptied first.
 */
function remembering(font: OpenFont): OpenFont {
  const setWord = font.layout.bind(font);
  const known = new Map<string, GlyphRun>();
  font.layout = (text, features) => {
    if (features !== undefined) return setWord(text, features);
    let run = known.get(text);
    if (run === undefined) {
      font._glyphs = {};
      const { advanceWidth, glyphs, positions } = setWord(text);
      run = { advanceWidth, glyphs, positions };
      if (known.size >= MOST_WORDS) known.clear();
      known.set(text, run);
    }
    return { ...run, positions: run.positions.map((position) => ({ ...position })) };
  };
  return font;
}
