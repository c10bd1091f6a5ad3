import { besselI0 } from '../base/index.js';

/**
 * Weights of a half-band filter on one side of its centre. The filter doubles the rate of a signal, where a value halfway
 * between two others is the sum of its neighbours by these weights, or halves it, where the weights stand on every other
 * sample and count one half.
 *
 * @param count weights on each side, for the values 0.5, 1.5, … samples of the slower signal away
 * @param beta shape of the Kaiser window: the larger, the less ripple and the wider the transition
 * @returns the weights, whose sum is one half
 *
 * Source: Kaiser-windowed sinc (Oppenheim & Schafer, Discrete-Time Signal Processing).
 */
export function halfBandWeights(count: number, beta: number): Float64Array {
  const weights = Float64Array.from({ length: count }, (_, j) => {
    const away = j + 0.5;
    const sinc = Math.sin(Math.PI * away) / (Math.PI * away);
    return sinc * besselI0(beta * Math.sqrt(1 - (away / count) ** 2));
  });
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / (2 * total));
}
