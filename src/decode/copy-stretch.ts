import type { Samples } from './types.js';

/**
 * @param into is filled with samples
 * @param samples a sound, silent beyond both ends
 * @param first the place of the first one
 */
export function copyStretch(into: Float32Array, samples: Samples, first: number): void {
  const [from, to] = [Math.max(0, first), Math.min(samples.length, first + into.length)];
  if (to - from < into.length) into.fill(0);
  if (to > from) into.set(samples.subarray(from, to), from - first);
}
