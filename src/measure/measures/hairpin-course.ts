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
  const at = smoothed(seconds);
  const start = rising[0]!;
  const peak = Math.max(...rising);
  const change = peak - start;
  if (change < LEAST_CHANGE_DB) return null;
  const from = at[0]!;
  const span = at.at(-1)! - from;
  const halfway = rising.filter((_, i) => Math.abs(at[i]! - from - span / 2) <= span / 8);
  if (halfway.length === 0) return null;
  return {
    halfwayShare: Math.min(1, Math.max(0, (median(halfway) - start) / change)),
    peakAt: (at[rising.indexOf(peak)]! - from) / span,
    turnedBackDb: peak - rising.at(-1)!,
    steadiness: kendallTau(levels.map((v) => direction * v)),
  };
}

/** Medians of whole windows only, so that an even change stays even to both ends; shorter by two than what goes in. */
function smoothed(values: readonly number[]): number[] {
  return values.slice(SMOOTHED_OVER - 1).map((_, i) => median(values.slice(i, i + SMOOTHED_OVER)));
}

/** Share of pairs in rising order less the share in falling order. */
function kendallTau(values: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) {
    for (let j = i + 1; j < values.length; j++) sum += Math.sign(values[j]! - values[i]!);
  }
  return sum / ((values.length * (values.length - 1)) / 2);
}
