import type { JudgeInput } from './judge-input.js';

/** What happens once may be the player's; what happens again is the room's. */
const LEAST_ECHOES = 2;

/**
 * @param input one take
 * @param onsetSeconds when a sound begins that is not in the part
 * @returns whether the room may have sent it back: a note of its pitch ended just before, and was plainly louder
 *
 * Source: standard echoSofter.
 */
export function mayBeEcho({ measurements, standards }: JudgeInput, onsetSeconds: number): boolean {
  return measurements.echoes.some((e) => e.onsetSeconds === onsetSeconds && e.softerDb >= standards.echoSofter.value);
}

/**
 * @param input one take
 * @returns whether the room sends notes back: an echo was measured, or sounds that may be one came again
 *
 * Source: standard echoSofter.
 */
export function roomEchoes({ measurements, standards }: JudgeInput): boolean {
  if (measurements.recording.echoSeconds !== undefined) return true;
  return measurements.echoes.filter((e) => e.softerDb >= standards.echoSofter.value).length >= LEAST_ECHOES;
}
