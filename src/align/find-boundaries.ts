import type { Features } from '../features/index.js';
import type { PitchGrid } from './pitch-grid.js';

/** Moments at which a note may begin, in order of time. */
export interface Boundaries {
  /** pitch frame of each */
  readonly frame: Int32Array;
  /** 0 to 1: how much the sound itself speaks for a new attack here, pitch left aside */
  readonly attack: Float32Array;
  /** 0 to 1: how much the pitch changes here */
  readonly pitchChange: Float32Array;
}

/** Two boundaries are at least this far apart. */
const APART_SECONDS = 0.022;
/** A rise of so many dB within the span is a clear attack. */
const CLEAR_RISE_DB = 9;
const CLEAR_CHANGE = 0.25;
const RISE_SPAN_SECONDS = 0.02;
/** Frames compared on each side for a change of pitch. */
const SIDE_SECONDS = 0.03;
const LEAST_STRENGTH = 0.1;

/**
 * @param features what was heard
 * @param grid evidence of pitch
 * @returns candidates for note onsets, several for each true one
 *
 * Source: level rise and spectral change as in onset detection (Bello et al. 2005); change of the strongest semitone.
 */
export function findBoundaries(features: Features, grid: PitchGrid): Boundaries {
  const attack = attackCurve(features, grid);
  const pitchChange = pitchChangeCurve(grid);
  const strength = attack.map((a, f) => Math.max(a, pitchChange[f]!));
  const apart = Math.max(1, Math.round(APART_SECONDS / grid.hopSeconds));
  const frames: number[] = [];
  for (let f = 1; f < grid.frames - 1; f++) {
    if (strength[f]! >= LEAST_STRENGTH && isPeak(strength, f, apart)) frames.push(f);
  }
  const near = (curve: Float32Array, f: number) => {
    let most = 0;
    for (let k = Math.max(0, f - apart); k <= Math.min(grid.frames - 1, f + apart); k++)
      most = Math.max(most, curve[k]!);
    return most;
  };
  return {
    frame: Int32Array.from(frames),
    attack: Float32Array.from(frames, (f) => near(attack, f)),
    pitchChange: Float32Array.from(frames, (f) => near(pitchChange, f)),
  };
}

function isPeak(curve: Float32Array, f: number, reach: number): boolean {
  const here = curve[f]!;
  for (let k = 1; k <= reach; k++) {
    if ((curve[f - k] ?? 0) >= here || (curve[f + k] ?? 0) > here) return false;
  }
  return true;
}

function attackCurve(features: Features, grid: PitchGrid): Float32Array {
  const span = Math.max(1, Math.round(RISE_SPAN_SECONDS / grid.hopSeconds));
  const { levelDb } = grid;
  const floor = features.noiseFloorDb;
  return levelDb.map((level, f) => {
    const behind = Math.max(floor, levelDb[Math.max(0, f - span)]!);
    const ahead = Math.max(floor, levelDb[Math.min(grid.frames - 1, f + span)]!);
    const audible = Math.min(1, Math.max(0, (ahead - floor - 6) / 10));
    const rise = (ahead - Math.min(behind, Math.max(floor, level))) / CLEAR_RISE_DB;
    const change = features.change[f]! / CLEAR_CHANGE;
    return audible * Math.min(1, Math.max(0, 0.7 * rise, 0.6 * change, 0.5 * (rise + change)));
  });
}

/** Share of the evidence that moves from one set of semitones to another around each frame. */
function pitchChangeCurve(grid: PitchGrid): Float32Array {
  const side = Math.max(2, Math.round(SIDE_SECONDS / grid.hopSeconds));
  const { strongest, frames } = grid;
  const curve = new Float32Array(frames);
  for (let f = side; f < frames - side; f++) {
    let differ = 0;
    let counted = 0;
    for (let k = 1; k <= side; k++) {
      const before = strongest[f - k]!;
      const after = strongest[f + k - 1]!;
      if (after < 0) continue;
      counted++;
      if (before !== after) differ++;
    }
    curve[f] = counted === 0 ? 0 : (differ / side) * (strongest[f]! === strongest[f - 1]! ? 0.9 : 1);
  }
  return curve;
}
