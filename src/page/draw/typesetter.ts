import type { Face, Typesetter } from '../drawing.js';
import { openFace } from './faces/faces.js';
import { lentFace } from './faces/lent-face.js';

/** Words and letters remembered; a report has some hundreds. */
const REMEMBERED = 5000;

const remembered = new Map<string, number>();
const drawable = new Map<string, boolean>();

/**
 * @param nameMissing what stands for letters of one kind that no face holds
 * @returns widths and coverage of the faces as PDFKit will set them: word by word, spaces without kerning
 *
 * Source: OpenType horizontal advances and kerning, read from the font files.
 */
export function createTypesetter(nameMissing: Typesetter['nameMissing']): Typesetter {
  const widthOfWord = (word: string, face: Face): number => {
    const key = `${face} ${word}`;
    const known = remembered.get(key);
    if (known !== undefined) return known;
    if (remembered.size >= REMEMBERED) remembered.clear();
    const font = openFace(face);
    const width = font.layout(word).advanceWidth / font.unitsPerEm;
    remembered.set(key, width);
    return width;
  };
  const hasGlyph = (character: string, face: Face): boolean => {
    const key = `${face} ${character}`;
    const known = drawable.get(key);
    if (known !== undefined) return known;
    if (drawable.size >= REMEMBERED) drawable.clear();
    const has = openFace(face).hasGlyphForCodePoint(character.codePointAt(0) as number);
    drawable.set(key, has);
    return has;
  };
  return {
    nameMissing,
    widthOf: (text, face, size) =>
      (text.match(/[^ ]* ?/g) ?? []).reduce((sum, word) => sum + (word === '' ? 0 : widthOfWord(word, face)), 0) * size,
    hasGlyph,
    faceFor: (character, face, text) => (hasGlyph(character, face) ? face : lentFace(character, face, text)),
  };
}
