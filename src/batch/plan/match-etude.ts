import { extname } from 'node:path';
import type { Etude } from '../../review/index.js';

/**
 * Finds the étude that is meant by a word in a roster or a file name: its file (with or without ending), or else its
 * title, or else the name of its part. Letter case does not count.
 *
 * @param word what stands there
 * @param etudes all études
 * @returns places of the études that are meant, none when the word means nothing here
 */
export function matchEtude(word: string, etudes: readonly Etude[]): number[] {
  const wanted = folded(word);
  for (const namesOf of NAMES) {
    const found = etudes.flatMap((etude, i) => (namesOf(etude).map(folded).includes(wanted) ? [i] : []));
    if (found.length > 0) return found;
  }
  return [];
}

const NAMES: readonly ((etude: Etude) => string[])[] = [
  ({ score }) => [score.file, score.file.slice(0, score.file.length - extname(score.file).length)],
  ({ part }) => [part.title],
  ({ part }) => [part.partName],
];

function folded(text: string): string {
  return text.normalize('NFC').trim().toLowerCase();
}
