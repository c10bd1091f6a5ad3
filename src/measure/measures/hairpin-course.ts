import { median } from '../../base/index.js';
import type { HairpinCourse } from '../types.js';

const LEAST_NOTES = 8;
/** The moving median that takes single notes out, in notes. */
const SMOOTHED_OVER = 3;
/** With less change than this nothing can be said of where it happens. */
const LEAST_CHANGE_DB = 3;

/**
 * Where within a crescendo or diminuendo the change happens.
 *
 * @param seconds onsets, rising
 * @param levels dB of the same notes, what they do by themselves taken out
 * @param direction 1 for a crescendo, -1 for a diminuendo
 * @returns shares of its time and of its change; null with fewer than eight notes or too little change
 *
 * Source: definition on a moving median of three; steadiness is Kendall's tau (Kendall 1938).
 */
export function hairpinCourse(
  seconds: readonly number[],
  levels: readonly number[],
  direction: 1 | -1,
): HairpinCourse | null {
  if (levels.length < LEAST_NOTES) return null;
  const rising = smoothed(levels.map((v) => direction * v));
  const start = median(rising.slice(0, SMOOTHED_OVER));
  const peak = Math.max(...rising);
  const change = peak - start;
  if (change < LEAST_CHANGE_DB) return null;
  const from = seconds[0]!;
  const span = seconds.at(-1)! - from;
  const halfway = rising.filter((_, i) => Math.abs(seconds[i]! - from - span / 2) <= span / 8);
  if (halfway.length === 0) return null;
  return {
    halfwayShare: Math.min(1, Math.max(0, (median(halfway) - start) / change)),
    peakAt: (seconds[rising.indexOf(peak)]! - from) / span,
    turnedBackDb: peak - median(rising.slice(-SMOOTHED_OVER)),
    steadiness: kendallTau(levels.map((v) => direction * v)),
  };
}

function smoothed(values: readonly number[]): number[] {
  const side = (SMOOTHED_OVER - 1) / 2;
  return values.map((_, i) => median(values.slice(Math.max(0, i - side), i + side + 1)));
}

/** Share of pairs in rising order less the share in falling order. */
function kendallTau(values: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) {
    for (let j = i + 1; j < values.length; j++) sum += Math.sign(values[j]! - values[i]!);
  }
  return sum / ((values.length * (values.length - 1)) / 2);
}
