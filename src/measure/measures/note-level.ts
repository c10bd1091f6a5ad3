import type { AlignedNote } from '../../align/index.js';
import { type MaybeNumber, median, notMeasured } from '../../base/index.js';
import type { Features } from '../../features/index.js';

/** The held part: this share of the note is left out at each end. */
const END_SHARE = 0.15;
const FRAME_SECONDS = 0.02;
const LEAST_SECONDS = 0.01;
const LEAST_ABOVE_FLOOR_DB = 3;

/**
 * Level of the held part of a note.
 *
 * @param features what was heard
 * @param note where the note is
 * @returns level in dBFS: median of 20 ms RMS levels over the middle of the note, or why there is no number
 *
 * Source: RMS by definition, unweighted; the median so that a swell, a beat or a late release does not count.
 */
export function measureNoteLevel(
  features: Features,
  note: Pick<AlignedNote, 'onsetSeconds' | 'offsetSeconds'>,
): MaybeNumber {
  const { onsetSeconds, offsetSeconds } = note;
  if (onsetSeconds === undefined || offsetSeconds === undefined) return notMeasured('note-not-heard');
  const seconds = offsetSeconds - onsetSeconds;
  if (seconds * (1 - 2 * END_SHARE) < LEAST_SECONDS) return notMeasured('note-too-short');
  const { power, levelHopSeconds: hop } = features;
  const from = Math.round((onsetSeconds + END_SHARE * seconds) / hop);
  const to = Math.max(from + 1, Math.round((offsetSeconds - END_SHARE * seconds) / hop));
  const level = median(frameLevels(power, from, to, Math.max(1, Math.round(FRAME_SECONDS / hop))));
  if (level < features.noiseFloorDb + LEAST_ABOVE_FLOOR_DB) return notMeasured('note-in-noise');
  return level;
}

/** RMS levels in dBFS of half-overlapping frames; one frame when the stretch is shorter. */
function frameLevels(power: Float32Array, from: number, to: number, length: number): number[] {
  const levels: number[] = [];
  const step = Math.max(1, Math.floor(length / 2));
  for (let start = from; start === from || start + length <= to; start += step) {
    const end = Math.min(to, start + length);
    let sum = 0;
    for (let f = start; f < end; f++) sum += power[f] ?? 0;
    levels.push(10 * Math.log10(sum / (end - start) + 1e-12));
  }
  return levels;
}
