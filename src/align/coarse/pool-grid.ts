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
  for (let s = 0; s < steps; s++) poolStep(grid, s, salience, voicing);
  return { steps, stepSeconds: POOL * grid.hopSeconds, pitches: grid.pitches, salience, voicing };
}

function poolStep(grid: PitchGrid, step: number, salience: Float32Array, voicing: Float32Array): void {
  const { pitches, frames } = grid;
  const into = step * pitches;
  for (let f = step * POOL, end = Math.min(frames, f + POOL); f < end; f++) {
    voicing[step] = voicing[step]! + grid.voicing[f]! / POOL;
    const row = f * pitches;
    for (let p = 0; p < pitches; p++) {
      const value = grid.salience[row + p]!;
      if (value > 0) salience[into + p] = salience[into + p]! + value / POOL;
    }
  }
}
