import type { JudgeInput } from './judge-input.js';

/**
 * @param input one take
 * @param index a note of the part
 * @returns whether the note is sure enough for a `fix` beside it: heard as written, with confidence
 *
 * Source: standard noteConfidence.
 */
export function isSure({ alignment, standards }: JudgeInput, index: number): boolean {
  const note = alignment.notes[index];
  return note?.status === 'as-written' && note.confidence >= standards.noteConfidence.value;
}
