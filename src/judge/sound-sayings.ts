import { isMeasured } from '../base/index.js';
import type { Measurements } from '../measure/index.js';
import type { Saying } from './criterion-sayings.js';
import { isUnsteady } from './judges/sound.js';
import { isSpeakingLate } from './judges/starts.js';
import type { JudgeInput } from './observed/judge-input.js';
import { whySoundIsOut } from './sound-judged.js';

/** Of fewer notes out of silence nothing is said. */
const LEAST_STARTS = 6;
/** Less of a change from soft to loud, in mean number of harmonics, is none; and an interval of 95 % reaches so many errors. */
const LEAST_HARMONICS = 0.3;
const ERRORS = 2;

/**
 * The sound of a take in one line: how many long notes are held steadily, how many with vibrato, whether the air goes
 * on under slurs, how many notes speak at once, how much of the tone is breath, and whether it is brighter when loud.
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
  return [...sayings, ...loudTone(measurements.toneColour)];
}

/** Whether the tone is surely brighter or darker when it is loud, or surely neither; nothing in between. */
function loudTone(colour: Measurements['toneColour']): Saying[] {
  if (colour === undefined || !isMeasured(colour) || !isMeasured(colour.withLoudness)) return [];
  const { harmonicsPerDb, errorHarmonicsPerDb, reachDb } = colour.withLoudness;
  const change = harmonicsPerDb * reachDb;
  const error = ERRORS * errorHarmonicsPerDb * reachDb;
  if (change - error > 0 && change > LEAST_HARMONICS) return [{ code: 'loud-tone', facts: { beside: 'brighter' } }];
  if (change + error < 0 && change < -LEAST_HARMONICS) return [{ code: 'loud-tone', facts: { beside: 'darker' } }];
  const alike = Math.abs(change) < error && Math.abs(change) + error < LEAST_HARMONICS;
  return alike ? [{ code: 'loud-tone', facts: { beside: 'as-bright' } }] : [];
}
