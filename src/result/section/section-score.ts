import type { Part } from '../../score/index.js';
import type { SectionScore } from './section-result-schema.js';

/**
 * @param score the score's file and hash
 * @param part the part that was read from it
 * @returns the score as result documents name it
 */
export function sectionScore(score: { readonly file: string; readonly sha256: string }, part: Part): SectionScore {
  return {
    file: score.file,
    sha256: score.sha256,
    title: part.title,
    part: part.partName,
    transposeSemitones: part.transposeSemitones,
    bars: part.printedBars,
    notes: part.notes.length,
  };
}
