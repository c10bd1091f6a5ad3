import type { AlignedNote } from '../../align/index.js';
import { type MaybeNumber, notMeasured } from '../../base/index.js';
import type { Features } from '../../features/index.js';
import { pitchCourse } from './pitch-course.js';
import { steadyCents } from './steady-cents.js';

/** The attack is left out: this share of the note, at least and at most so many seconds. */
const ATTACK_SHARE = 0.35;
const LEAST_ATTACK_SECONDS = 0.02;
const MOST_ATTACK_SECONDS = 0.08;
const RELEASE_SECONDS = 0.005;
const LEAST_FRAMES = 4;
const LEAST_CLARITY = 0.6;

/**
 * Deviation of a note from equal temperament: median over its steady part. A note that holds two pitches has none.
 *
 * @param features what was heard
 * @param note where the note is
 * @param soundedMidi semitone that sounded in the recording
 * @returns cents from A = 440 Hz equal temperament, sharp positive, or why there is no number
 *
 * Source: ISO 16 for A4; median of frames by definition.
 */
export function measureNotePitch(features: Features, note: AlignedNote, soundedMidi: number): MaybeNumber {
  const { onsetSeconds, offsetSeconds } = note;
  if (onsetSeconds === undefined || offsetSeconds === undefined) return notMeasured('note-not-heard');
  const attack = Math.min(
    MOST_ATTACK_SECONDS,
    Math.max(LEAST_ATTACK_SECONDS, ATTACK_SHARE * (offsetSeconds - onsetSeconds)),
  );
  const [from, to] = [onsetSeconds + attack, offsetSeconds - RELEASE_SECONDS];
  const { cents } = pitchCourse(features, soundedMidi, from, to, LEAST_CLARITY);
  if (cents.length < LEAST_FRAMES) return notMeasured('note-unsteady');
  return steadyCents(cents) ?? notMeasured('note-unsteady');
}
