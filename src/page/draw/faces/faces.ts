import { createRequire } from 'node:module';
import type { Face, LentFace, OwnFace } from '../../drawing.js';
import type { GlyphRun, OpenFont } from './open-font.js';
import { openSlice } from './open-slice.js';
import { loadPdfKit } from './pdf-kit.js';

const require = createRequire(import.meta.url);

const FILES: Readonly<Record<OwnFace, string>> = {
  regular: '@expo-google-fonts/source-serif-4/400Regular/SourceSerif4_400Regular.ttf',
  semibold: '@expo-google-fonts/source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf',
  italic: '@expo-google-fonts/source-serif-4/400Regular_Italic/SourceSerif4_400Regular_Italic.ttf',
  music: '@vexflow-fonts/bravura/bravura.otf',
};

/** Words set anew for each face until those not met since are forgotten; a report has some hundreds. */
const MOST_WORDS = 500;

let opened: Readonly<Record<OwnFace, OpenFont>> | undefined;
const lent = new Map<LentFace, OpenFont>();

/**
 * Opens the faces once a process: Source Serif 4 and Bravura, both under the SIL Open Font License.
 *
 * @returns the four faces
 */
export function openFaces(): Readonly<Record<OwnFace, OpenFont>> {
  opened ??= {
    regular: openOwn('regular'),
    semibold: openOwn('semibold'),
    italic: openOwn('italic'),
    music: openOwn('music'),
  };
  return opened;
}

/**
 * @param face one of all pages, or one lent for some letters
 * @returns the face, opened once a process
 */
export function openFace(face: Face): OpenFont {
  if (isOwn(face)) return openFaces()[face];
  let font = lent.get(face);
  if (font === undefined) {
    const [, weight, slice] = face.split(' ') as [string, string, string];
    font = remembering(openSlice(slice, Number(weight)));
    lent.set(face, font);
  }
  return font;
}

const isOwn = (face: Face): face is OwnFace => face in FILES;

/** PDFKit opens the font and hands out what it embeds from. */
function openOwn(face: OwnFace): OpenFont {
  const options = { font: require.resolve(FILES[face]), autoFirstPage: false };
  const PDFDocument = loadPdfKit();
  const holder = new PDFDocument(options) as unknown as { _font: { font: OpenFont } };
  return remembering(holder._font.font);
}

/**
 * Setting a word is most of the work of a page, and pages share their words; names and numbers of one take are not met again,
 * and forgotten. PDFKit scales the positions it is given in
 * place, so each caller gets its own. An opened font remembers the glyphs it has handed out, and with them the characters
 * they stood for; what one document leaves there would change the text of the next, so that memory is emptied first.
 */
function remembering(font: OpenFont): OpenFont {
  const setWord = font.layout.bind(font);
  let known = new Map<string, GlyphRun>();
  let before = new Map<string, GlyphRun>();
  const setAnew = (text: string): GlyphRun => {
    font._glyphs = {};
    const { advanceWidth, glyphs, positions } = setWord(text);
    return { advanceWidth, glyphs, positions };
  };
  font.layout = (text, features) => {
    if (features !== undefined) return setWord(text, features);
    let run = known.get(text);
    if (run === undefined) {
      run = before.get(text) ?? setAnew(text);
      if (known.size >= MOST_WORDS) [before, known] = [known, new Map()];
      known.set(text, run);
    }
    return { ...run, positions: run.positions.map((position) => ({ ...position })) };
  };
  return font;
}
