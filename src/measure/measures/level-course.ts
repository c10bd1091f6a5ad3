import type { Features } from '../../features/index.js';

const FRAME_SECONDS = 0.04;
const STEP_SECONDS = 0.01;

/** The level of a stretch of sound, frame by frame. */
export interface LevelCourse {
  /** middles of the frames */
  readonly seconds: number[];
  readonly decibels: number[];
}

/**
 * @param features what was heard
 * @param fromSeconds from where on
 * @param toSeconds up to where
 * @returns RMS levels in dBFS of frames of 40 ms, a hundredth of a second apart, that lie within the stretch
 *
 * Source: RMS by definition; the frames hold more than two periods of the lowest tuba note.
 */
export function levelCourse(features: Features, fromSeconds: number, toSeconds: number): LevelCourse {
  const { power, levelHopSeconds: hop } = features;
  const length = Math.max(1, Math.round(FRAME_SECONDS / hop));
  const step = Math.max(1, Math.round(STEP_SECONDS / hop));
  const course: LevelCourse = { seconds: [], decibels: [] };
  const last = Math.min(Math.floor(toSeconds / hop), power.length) - length;
  for (let f = Math.max(0, Math.ceil(fromSeconds / hop)); f <= last; f += step) {
    let sum = 0;
    for (let k = f; k < f + length; k++) sum += power[k]!;
    course.seconds.push((f + length / 2) * hop);
    course.decibels.push(10 * Math.log10(sum / length + 1e-12));
  }
  return course;
}
