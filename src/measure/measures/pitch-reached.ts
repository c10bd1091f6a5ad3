import { CANDIDATES, type Features } from '../../features/index.js';

const WITHIN_SEMITONES = 0.6;
const LEAST_CLARITY = 0.7;
/** So many frames in a row at its pitch, and it has come to it. */
const FRAMES_IN_A_ROW = 4;
/** Another pitch is so far away. */
const ANOTHER_SEMITONES = 2.5;

/**
 * @param features what was heard
 * @param from where to begin looking, seconds
 * @param to where to end looking, seconds
 * @param midi the pitch of a note as it sounds
 * @returns when the note has come to its pitch, seconds; null where it does not
 */
export function pitchReached(features: Features, from: number, to: number, midi: number): number | null {
  const { pitchHopSeconds: hop, candidateMidi, candidateClarity } = features;
  let row = 0;
  for (let f = Math.round(from / hop); f * hop <= to; f++) {
    let there = false;
    for (let c = f * CANDIDATES; c < (f + 1) * CANDIDATES; c++) {
      if (Math.abs(candidateMidi[c]! - midi) < WITHIN_SEMITONES && candidateClarity[c]! >= LEAST_CLARITY) there = true;
    }
    if (!there || isAnother(candidateMidi[f * CANDIDATES]! - midi)) row = 0;
    else if (++row === FRAMES_IN_A_ROW) return (f - FRAMES_IN_A_ROW + 1) * hop;
  }
  return null;
}

/**
 * @param semitones from a note's pitch to another that is heard
 * @returns whether that is plainly another one; octaves below are in every tone
 */
export function isAnother(semitones: number): boolean {
  const below = semitones < 0 ? Math.abs(semitones + 12 * Math.round(-semitones / 12)) : Number.POSITIVE_INFINITY;
  return Math.abs(semitones) >= ANOTHER_SEMITONES && below >= WITHIN_SEMITONES;
}
