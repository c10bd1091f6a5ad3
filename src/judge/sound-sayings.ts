import type { Saying } from './criterion-sayings.js';
import { isUnsteady } from './judges/sound.js';
import type { JudgeInput } from './observed/judge-input.js';
import { whySoundIsOut } from './sound-judged.js';

/**
 * The sound of a take in one line: how many long notes are held steadily, and how many with vibrato.
 *
 * @param input one take
 * @returns what is said of it; empty where nothing can be told
 */
export function soundSayings(input: JudgeInput): Saying[] {
  const { measurements } = input;
  if (whySoundIsOut(measurements) !== null) return [];
  const { heldNotes } = measurements;
  const unsteady = heldNotes.filter((note) => isUnsteady(input, note)).length;
  const vibrato = heldNotes.filter((note) => note.vibrato !== undefined).length;
  const of = heldNotes.length;
  const steady = { code: 'notes-steady', facts: { steady: of - unsteady, of } } as const;
  return vibrato === 0 ? [steady] : [steady, { code: 'with-vibrato', facts: { count: vibrato } }];
}
