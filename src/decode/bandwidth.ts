import type { Samples } from './types.js';

const WINDOW = 1024;
const BANDS = 128;
/** A wave of the lowest band goes round once in so many samples, at twice a half. */
const ROUND = 4 * BANDS;
const PARTS = 24;
const CANDIDATES = 4;
/** What a codec leaves out is silent, what a room adds is not: −85 dB under the strongest band. */
const SILENT_POWER_RATIO = 10 ** -8.5;

const COSINE = Float64Array.from({ length: ROUND }, (_, i) => Math.cos((2 * Math.PI * i) / ROUND));
const TAPER = Float64Array.from({ length: WINDOW }, (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / WINDOW));

function power(samples: Float32Array): number {
  let squares = 0;
  for (const sample of samples) squares += sample * sample;
  return squares;
}

/** The loudest of a few windows of a part of the take. */
function windowIn(samples: Samples, part: number): Float32Array {
  const last = samples.length - WINDOW;
  let best = new Float32Array(WINDOW);
  for (let c = 0; c < CANDIDATES; c++) {
    const from = Math.floor((last * (part * CANDIDATES + c)) / (PARTS * CANDIDATES));
    const candidate = samples.subarray(from, from + WINDOW);
    if (power(candidate) > power(best)) best = candidate.slice();
  }
  return best;
}

function bandPower(window: Float64Array, band: number): number {
  const step = 2 * band + 1;
  let [real, imaginary] = [0, 0];
  for (let i = 0, at = 0; i < WINDOW; i++, at = (at + step) % ROUND) {
    const value = window[i] as number;
    real += value * (COSINE[at] as number);
    imaginary += value * (COSINE[(at + ROUND / 4) % ROUND] as number);
  }
  return real * real + imaginary * imaginary;
}

/**
 * @param samples mono
 * @param sampleRateHz their rate
 * @returns the frequency above which nothing sounds, to 1/256 of the rate: what a codec or a recorder keeps, unless
 * nothing so high was played and the recording has no noise at all; 0 for silence and for less than 1024 samples
 *
 * Hann window, discrete Fourier transform at the middle of 128 bands.
 */
export function measureBandwidth(samples: Samples, sampleRateHz: number): number {
  if (samples.length < WINDOW) return 0;
  const peaks = new Float64Array(BANDS);
  for (let part = 0; part < PARTS; part++) {
    const tapered = Float64Array.from(windowIn(samples, part), (value, i) => value * (TAPER[i] as number));
    for (let band = 0; band < BANDS; band++) {
      peaks[band] = Math.max(peaks[band] as number, bandPower(tapered, band));
    }
  }
  const least = Math.max(...peaks) * SILENT_POWER_RATIO;
  const highest = peaks.findLastIndex((peak) => peak > least);
  return ((highest + 1) * sampleRateHz) / (2 * BANDS);
}
