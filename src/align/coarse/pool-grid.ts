import type { PitchGrid } from '../pitch-grid.js';

/** Pitch frames in one step of the coarse search. */
const POOL = 4;

/** The grid at the pace of the coarse search. */
export interface PooledGrid {
  readonly steps: number;
  readonly stepSeconds: number;
  readonly pitches: number;
  readonly salience: Float32Array;
  readonly voicing: Float32Array;
}

/**
 * @param grid evidence a pitch frame
 * @returns mean evidence over steps of a few frames
 *
 * Source: definition.
 */
export function poolGrid(grid: PitchGrid): PooledGrid {
  const steps = Math.max(1, Math.floor(grid.frames / POOL));
  const salience = new Float32Array(steps * grid.pitches);
  const voicing = new Float32Array(steps);
  for (let s = 0; s < steps; s++) {
    for (let k = 0; k < POOL; k++) {
      const f = s * POOL + k;
      voicing[s] = voicing[s]! + (grid.voicing[f] ?? 0) / POOL;
      for (let p = 0; p < grid.pitches; p++) {
        salience[s * grid.pitches + p] =
          salience[s * grid.pitches + p]! + (grid.salience[f * grid.pitches + p] ?? 0) / POOL;
      }
    }
  }
  return { steps, stepSeconds: POOL * grid.hopSeconds, pitches: grid.pitches, salience, voicing };
}
