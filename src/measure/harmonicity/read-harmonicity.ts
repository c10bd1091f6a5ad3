import { median } from '../../base/index.js';
import type { Features } from '../../features/index.js';
import { likeness } from './likeness.js';
import { filteredStretch, lowPassWeights } from './low-pass.js';

/** Stretches of a note that are looked at, and how long each is at least, in seconds and in periods. */
const STRETCHES = 3;
const STRETCH_SECONDS = 0.04;
const STRETCH_PERIODS = 4;
/** High notes are compared over several periods, as noise goes together over a shorter time. */
const LEAST_LAG_SECONDS = 0.002;
/** Samples around a stretch for reading between samples, and for the best lag being another than the one expected. */
const MARGIN = 24;
/** Correlations nearer to 1 than this say no more than how exactly they can be read. */
const LEAST_NOISE = 1e-6;

/** How much of a tone repeats from period to period, and how loud what does not repeat is. */
export interface Harmonicity {
  readonly harmonicsToNoiseDb: number;
  /** level of the noise, dBFS */
  readonly noiseDb: number;
}

/** Reads the steady part of a note: from and to in seconds, and the pitch in Hz at a time. */
export type HarmonicityReader = (
  fromSeconds: number,
  toSeconds: number,
  hzAt: (seconds: number) => number,
) => Harmonicity | null;

/**
 * Harmonics over noise below 4 kHz, from how like each period of a tone is to the next.
 *
 * @param features what was heard
 * @returns reads medians over stretches of a note; null where the part is too short for them, silent, or no tone
 *
 * Source: Boersma 1993, "Accurate short-term analysis of the fundamental frequency and the harmonics-to-noise ratio of a sampled
 * sound": r / (1 − r) at the best period. Differs: r is the normalised cross-correlation of a weighted stretch with
 * the one a period later, which needs no correction for the window.
 */
export function harmonicityReader({ signal, signalRateHz: rate }: Features): HarmonicityReader {
  const weights = lowPassWeights(rate);
  return (fromSeconds, toSeconds, hzAt) => {
    const longest = rate / hzAt(fromSeconds);
    const length = Math.round(Math.max(STRETCH_SECONDS * rate, STRETCH_PERIODS * longest));
    const reach = Math.ceil(Math.max(longest, 2 * LEAST_LAG_SECONDS * rate)) + MARGIN;
    const first = Math.max(0, Math.ceil(fromSeconds * rate));
    const last = Math.min(signal.length, Math.floor(toSeconds * rate)) - length - reach;
    if (last <= first) return null;
    const found = Array.from({ length: STRETCHES }, (_, k) => {
      const at = Math.round(first + (k * (last - first)) / (STRETCHES - 1));
      const hz = hzAt((at + length / 2) / rate);
      const lag = (Math.ceil(LEAST_LAG_SECONDS * hz) * rate) / hz;
      const stretch = filteredStretch(signal, weights, at - MARGIN, at + length + reach);
      return likeness(stretch, MARGIN, length, lag);
    });
    // where nothing sounds, or nothing comes again, there is no tone to set against noise
    if (found.some(({ correlation, power }) => power <= 0 || !(correlation > 0))) return null;
    const noises = found.map(({ correlation }) => Math.max(LEAST_NOISE, 1 - correlation));
    return {
      harmonicsToNoiseDb: median(noises.map((noise) => 10 * Math.log10((1 - noise) / noise))),
      noiseDb: median(noises.map((noise, k) => 10 * Math.log10(found[k]!.power * noise))),
    };
  };
}
