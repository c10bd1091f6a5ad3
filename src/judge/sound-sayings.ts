import { isMeasured } from '../base/index.js';
import type { Saying } from './criterion-sayings.js';
import { isUnsteady } from './judges/sound.js';
import { isSpeakingLate } from './judges/starts.js';
import type { JudgeInput } from './observed/judge-input.js';
import { whySoundIsOut } from './sound-judged.js';

/** Of fewer notes out of silence nothing is said. */
const LEAST_STARTS = 6;

/**
 * The sound of a take in one line: how many long notes are held steadily, how many with vibrato, whether the air goes
 * on under slurs, how many notes speak at once, and how much of the tone is breath.
 *
 * @param input one take
 * @returns what is said of it; empty where nothing can be told
 */
export function soundSayings(input: JudgeInput): Saying[] {
  const { measurements } = input;
  if (whySoundIsOut(measurements) !== null) return [];
  const { heldNotes, slurredAir, starts, breathNoise } = measurements;
  const unsteady = heldNotes.filter((note) => isUnsteady(input, note)).length;
  const vibrato = heldNotes.filter((note) => note.vibrato !== undefined).length;
  const of = heldNotes.length;
  const sayings: Saying[] = [{ code: 'notes-steady', facts: { steady: of - unsteady, of } }];
  if (vibrato > 0) sayings.push({ code: 'with-vibrato', facts: { count: vibrato } });
  if (isMeasured(slurredAir)) sayings.push({ code: 'air-under-slurs', facts: { db: slurredAir.dipDb } });
  if (starts.length >= LEAST_STARTS) {
    const late = starts.filter((start) => isSpeakingLate(input, start)).length;
    sayings.push({ code: 'notes-speak', facts: { prompt: starts.length - late, of: starts.length } });
  }
  if (isMeasured(breathNoise))
    sayings.push({ code: 'tone-over-breath', facts: { db: breathNoise.harmonicsToNoiseDb } });
  return sayings;
}
