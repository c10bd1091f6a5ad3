import { CANDIDATES, type Features } from '../features/index.js';

/**
 * The tuning that most of the playing agrees on, modulo a semitone.
 *
 * @param features what was heard
 * @returns cents, -50 to 50, sharp positive; 0 when nothing is periodic
 *
 * Source: circular mean of the deviations from the equal-tempered grid, weighted by periodicity and level.
 */
export function estimateTuning(features: Features): number {
  let x = 0;
  let y = 0;
  for (let f = 0; f < features.pitchFrames; f++) {
    const clarity = features.candidateClarity[f * CANDIDATES]!;
    if (clarity < 0.8) continue;
    const at = Math.min(
      features.power.length - 1,
      Math.round((f * features.pitchHopSeconds) / features.levelHopSeconds),
    );
    const weight = clarity * Math.sqrt(features.power[at] ?? 0);
    const angle = 2 * Math.PI * features.candidateMidi[f * CANDIDATES]!;
    x += weight * Math.cos(angle);
    y += weight * Math.sin(angle);
  }
  return x === 0 && y === 0 ? 0 : (100 * Math.atan2(y, x)) / (2 * Math.PI);
}
