import type { JudgeInput } from './judge-input.js';

/**
 * What a coding may have done to a time: a sound coded with losses begins a little before itself, and so a finding that rests
 * on a time is sure only where it would still be told if that much were the coding's.
 *
 * @param input one take
 * @returns seconds by which an onset may lie elsewhere in the recording than in the playing; 0 for lossless files
 *
 * Source: what the coding itself moves, as `decode` tells it: 95 of 100 onsets stay within it.
 */
export function onsetDoubt(input: Pick<JudgeInput, 'measurements'>): number {
  return input.measurements.recording.onsetSpreadSeconds;
}
