import { basename } from 'node:path';
import { sha256 } from '../../base/index.js';
import { type Part, readPart } from '../../score/index.js';
import { namingFile } from './naming-file.js';
import { readWhole } from './read-whole.js';

const LARGEST_SCORE_BYTES = 64 * 2 ** 20;

/** A score as it was read. */
export interface ReadScore {
  readonly bytes: Uint8Array;
  readonly part: Part;
  readonly score: { readonly file: string; readonly sha256: string };
}

/**
 * @param path the score's file
 * @returns its bytes, its part, and what names it in documents
 * @throws InputError naming the file when it cannot be read as a part
 */
export function readScore(path: string): ReadScore {
  return namingFile(path, () => {
    const bytes = readWhole(path, LARGEST_SCORE_BYTES);
    return { bytes, part: readPart(bytes), score: { file: basename(path), sha256: sha256(bytes) } };
  });
}
