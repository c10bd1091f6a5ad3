/** The engine comes to no end at higher rates. */
export const HIGHEST_RATE_HZ = 48_000;

/**
 * Means of so many samples each: what they let through beyond half the new rate is soft, and no pitch is there.
 *
 * @param samples any rate
 * @param every how many make one
 * @returns the slower samples
 */
export function slower(samples: Float32Array, every: number): Float32Array {
  if (every === 1) return samples;
  return Float32Array.from({ length: Math.floor(samples.length / every) }, (_, i) => {
    let sum = 0;
    for (let k = 0; k < every; k++) sum += samples[i * every + k]!;
    return sum / every;
  });
}
