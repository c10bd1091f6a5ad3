import type { JudgeInput } from './observed/judge-input.js';
import { strayOf } from './observed/stray-of.js';
import { standardsFor } from './standards-for.js';

/**
 * @param input as for `judgeTake`
 * @returns notes, by index, that are going to be told as surely out of tune: those a second ear is worth asking about
 *
 * Source: standards noteFix, noteSeconds.
 */
export function surelyOutOfTune(input: Omit<JudgeInput, 'standards'>): number[] {
  if (input.alignment.fit !== 'this-part' || input.brief?.criteria.intonation.judged === false) return [];
  const standards = standardsFor(input.brief);
  return input.measurements.notes.flatMap((measure) =>
    strayOf({ ...input, standards }, measure)?.weight === 'fix' ? [measure.index] : [],
  );
}
