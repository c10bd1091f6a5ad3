import { extname } from 'node:path';
import type { Piece } from '../../review/index.js';

/**
 * Finds the piece that is meant by a word in a roster or a file name: its file (with or without ending), or else its
 * title, or else the name of its part. Letter case does not count.
 *
 * @param word what stands there
 * @param pieces all pieces
 * @returns places of the pieces that are meant, none when the word means nothing here
 *
 * Source: definition.
 */
export function matchPiece(word: string, pieces: readonly Piece[]): number[] {
  const wanted = folded(word);
  for (const namesOf of NAMES) {
    const found = pieces.flatMap((piece, i) => (namesOf(piece).map(folded).includes(wanted) ? [i] : []));
    if (found.length > 0) return found;
  }
  return [];
}

const NAMES: readonly ((piece: Piece) => string[])[] = [
  ({ score }) => [score.file, score.file.slice(0, score.file.length - extname(score.file).length)],
  ({ part }) => [part.title],
  ({ part }) => [part.partName],
];

function folded(text: string): string {
  return text.normalize('NFC').trim().toLowerCase();
}
