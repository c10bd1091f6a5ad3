import { CANDIDATES, type Features } from '../../src/features/index.js';

/** Seconds from one level to the next. */
export const LEVEL_HOP = 0.002;
/** Seconds from one pitch to the next. */
export const PITCH_HOP = 0.005;

/** Power of a level a frame; what is not said is −87 dB. */
export function sounding(
  seconds: number,
  ...stretches: readonly (readonly [from: number, to: number, db: number])[]
): Features {
  const power = new Float32Array(Math.round(seconds / LEVEL_HOP)).fill(2e-9);
  for (const [from, to, db] of stretches)
    power.fill(10 ** (db / 10), Math.round(from / LEVEL_HOP), Math.round(to / LEVEL_HOP));
  const pitchFrames = Math.floor(seconds / PITCH_HOP) + 1;
  const candidateMidi = new Float32Array(CANDIDATES * pitchFrames);
  const candidateClarity = new Float32Array(CANDIDATES * pitchFrames);
  return {
    ...{ power, levelHopSeconds: LEVEL_HOP, noiseFloorDb: -80, durationSeconds: seconds },
    ...{ pitchHopSeconds: PITCH_HOP, pitchFrames, candidateMidi, candidateClarity },
  } as unknown as Features;
}
/** The same with a pitch between two times, as the candidate of a rank. */
export function pitched(features: Features, from: number, to: number, midi: number, clarity = 0.9, rank = 0): Features {
  for (let f = Math.round(from / PITCH_HOP); f < Math.round(to / PITCH_HOP); f++) {
    features.candidateMidi[CANDIDATES * f + rank] = midi;
    features.candidateClarity[CANDIDATES * f + rank] = clarity;
  }
  return features;
}
