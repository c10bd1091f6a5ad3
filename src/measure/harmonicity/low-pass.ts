import { besselI0 } from '../../base/index.js';

/** Source: Kaiser 1974: 60 dB; taps on each side for a transition of a sixteenth of the rate. */
const BETA = 5.65;
const SIDE_TAPS = 30;
/** The signal is clean up to here: above, what was filtered away comes back mirrored. */
const MOST_OF_RATE = 0.36;
const HIGHEST_HZ = 4000;

/**
 * @param rateHz of a signal that was made slower
 * @returns weights of a filter that leaves what lies below 4 kHz, or below three eighths of a slower rate; symmetrical about the
 * middle one
 *
 * Source: windowed-sinc design (Oppenheim & Schafer), Kaiser window.
 */
export function lowPassWeights(rateHz: number): Float64Array {
  const cut = Math.min(MOST_OF_RATE, HIGHEST_HZ / rateHz);
  const weights = Float64Array.from({ length: 2 * SIDE_TAPS + 1 }, (_, i) => {
    const n = i - SIDE_TAPS;
    const ideal = n === 0 ? 2 * cut : Math.sin(2 * Math.PI * cut * n) / (Math.PI * n);
    return (ideal * besselI0(BETA * Math.sqrt(1 - (n / SIDE_TAPS) ** 2))) / besselI0(BETA);
  });
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return weights.map((weight) => weight / sum);
}

/**
 * @param signal samples
 * @param weights of a filter, an odd number
 * @param from first sample wanted
 * @param to sample after the last one
 * @returns that stretch of the filtered signal, without delay; beyond its ends the signal is silent
 *
 * Source: convolution, by definition.
 */
export function filteredStretch(signal: Float32Array, weights: Float64Array, from: number, to: number): Float64Array {
  const side = (weights.length - 1) / 2;
  const out = new Float64Array(to - from);
  const padded = new Float64Array(to - from + 2 * side);
  const [first, last] = [Math.max(0, from - side), Math.min(signal.length, to + side)];
  padded.set(signal.subarray(first, last), first - from + side);
  for (let i = 0; i < out.length; i++) {
    let sum = weights[side]! * padded[i + side]!;
    for (let k = 0; k < side; k++) sum += weights[k]! * (padded[i + k]! + padded[i + 2 * side - k]!);
    out[i] = sum;
  }
  return out;
}
