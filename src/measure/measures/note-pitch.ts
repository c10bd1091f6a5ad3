import type { AlignedNote } from '../../align/index.js';
import { type MaybeNumber, notMeasured } from '../../base/index.js';
import { CANDIDATES, type Features } from '../../features/index.js';
import { steadyCents } from './steady-cents.js';

/** The attack is left out: this share of the note, at least and at most so many seconds. */
const ATTACK_SHARE = 0.35;
const LEAST_ATTACK_SECONDS = 0.02;
const MOST_ATTACK_SECONDS = 0.08;
const RELEASE_SECONDS = 0.005;
const LEAST_FRAMES = 4;
const WITHIN_SEMITONES = 0.8;
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
  const from = Math.ceil((onsetSeconds + attack) / features.pitchHopSeconds);
  const to = Math.floor((offsetSeconds - RELEASE_SECONDS) / features.pitchHopSeconds);
  const cents: number[] = [];
  for (let f = from; f <= Math.min(to, features.pitchFrames - 1); f++) {
    for (let c = 0; c < CANDIDATES; c++) {
      const midi = features.candidateMidi[f * CANDIDATES + c]!;
      if (Math.abs(midi - soundedMidi) > WITHIN_SEMITONES) continue;
      if (features.candidateClarity[f * CANDIDATES + c]! >= LEAST_CLARITY) cents.push(100 * (midi - soundedMidi));
      break;
    }
  }
  if (cents.length < LEAST_FRAMES) return notMeasured('note-unsteady');
  return steadyCents(cents) ?? notMeasured('note-unsteady');
}
