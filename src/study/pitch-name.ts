import type { PitchName } from './types.js';

/**
 * @param pitch a pitch with its octave, or a name
 * @returns its letter and alteration alone
 */
export function pitchName({ step, alter }: PitchName): PitchName {
  return { step, alter };
}
