import { type Brief, readBrief } from '../../brief/index.js';
import type { Part } from '../../score/index.js';
import { namingFile } from './naming-file.js';
import { readWhole } from './read-whole.js';

const LARGEST_BRIEF_BYTES = 2 ** 20;

/**
 * @param path the brief's file, UTF-8
 * @param part the part it is for
 * @returns the brief
 * @throws InputError naming the file when it cannot be read as a brief
 */
export function readBriefFile(path: string, part: Part): Brief {
  return namingFile(path, () => {
    const bytes = readWhole(path, LARGEST_BRIEF_BYTES);
    return readBrief(new TextDecoder().decode(bytes), part);
  });
}
