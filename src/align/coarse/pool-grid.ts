import type { PitchGrid } from '../grid/pitch-grid.js';

/** Pitch frames in one step of the coarse search. */
const POOL = 4;

/** The grid at the pace of the coarse search. */
export interface PooledGrid {
  readonly steps: number;
  readonly stepSeconds: number;
  readonly pitches: number;
  /** evidence a step that a tone is being played, 0 to 1 */
  readonly voicing: Float32Array;
  /**
   * @param step one of `steps`
   * @param into where its evidence a pitch goes, from the first entry on
   */
  read(step: number, into: Float32Array): void;
}

/**
 * @param grid evidence a pitch frame
 * @returns mean evidence over steps of a few frames
 */
export function poolGrid(grid: PitchGrid): PooledGrid {
  const { frames, pitches, voicing: framewise } = grid;
  const steps = Math.max(1, Math.floor(frames / POOL));
  const voicing = new Float32Array(steps);
  for (let f = 0, end = Math.min(frames, steps * POOL); f < end; f++) {
    const step = Math.floor(f / POOL);
    voicing[step] = voicing[step]! + framewise[f]! / POOL;
  }
  return {
    steps,
    stepSeconds: POOL * grid.hopSeconds,
    pitches,
    voicing,
    read: (step, into) => poolStep(grid, step, into),
  };
}

function poolStep({ frames, pitches, rowStart, place, salience }: PitchGrid, step: number, into: Float32Array): void {
  into.fill(0, 0, pitches);
  const end = rowStart[Math.min(frames, step * POOL + POOL)]!;
  for (let k = rowStart[step * POOL]!; k < end; k++) into[place[k]!] = into[place[k]!]! + salience[k]! / POOL;
}
