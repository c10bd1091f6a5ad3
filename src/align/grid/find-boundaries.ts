import type { Features } from '../../features/index.js';
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
/** Mean evidence a frame below which there is no pitch to speak of. */
const LEAST_EVIDENCE = 0.15;

/**
 * @param features what was heard
 * @param grid evidence of pitch
 * @returns candidates for note onsets, several for each true one
 *
 * Source: level rise and spectral change as in onset detection (Bello et al. 2005); change of the semitones that sound.
 */
export function findBoundaries(features: Features, grid: PitchGrid): Boundaries {
  const attack = attackCurve(features, grid);
  const pitchChange = pitchChangeCurve(grid, grid.byPeriod);
  if (grid.salience !== grid.byPeriod) {
    // harmonics tell changes that periods mistake for octaves; periods are sharper in time
    pitchChangeCurve(grid, grid.salience).forEach((c, f) => {
      if (c > pitchChange[f]!) pitchChange[f] = c;
    });
  }
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

/**
 * How much the pitch changes around each frame: how far the semitone that was strongest fades, or the one that becomes
 * strongest was not there before. A tone whose octave flickers up and down keeps both, and does not change.
 */
function pitchChangeCurve(grid: PitchGrid, evidence: Float32Array): Float32Array {
  const side = Math.max(2, Math.round(SIDE_SECONDS / grid.hopSeconds));
  const { frames, pitches } = grid;
  const before = new Float64Array(pitches);
  const after = new Float64Array(pitches);
  const curve = new Float32Array(frames);
  for (let f = 0; f < Math.min(side, frames); f++) slide(grid, evidence, after, -1, f);
  for (let f = 1; f < frames; f++) {
    const old = slide(grid, evidence, before, f - side - 1, f - 1);
    const next = slide(grid, evidence, after, f - 1, f + side - 1);
    const mostAfter = after[next]!;
    if (mostAfter < LEAST_EVIDENCE * side) continue;
    const heard = Math.min(1, mostAfter / (0.6 * side));
    const faded = 1 - after[old]! / mostAfter;
    const appeared = before[old]! < LEAST_EVIDENCE * side ? 1 : 1 - before[next]! / before[old]!;
    // the lesser of the two is largest in the middle of the change
    curve[f] = heard * Math.max(0, 0.8 * Math.max(faded, appeared) + 0.2 * Math.min(faded, appeared));
  }
  return curve;
}

/**
 * Moves sums over a stretch of frames on by one frame; a frame outside the recording counts nothing.
 *
 * @returns the semitone with the largest sum
 */
function slide(grid: PitchGrid, evidence: Float32Array, sums: Float64Array, leaving: number, entering: number): number {
  if (entering < grid.frames) addRow(grid, evidence, sums, entering, grid.voicing[entering]!);
  if (leaving >= 0) addRow(grid, evidence, sums, leaving, -grid.voicing[leaving]!);
  let at = 0;
  let most = sums[0]!;
  for (let p = 1; p < sums.length; p++) {
    const sum = sums[p]!;
    if (sum <= most) continue;
    most = sum;
    at = p;
  }
  return at;
}

function addRow(
  { rowStart, place }: PitchGrid,
  evidence: Float32Array,
  sums: Float64Array,
  frame: number,
  weight: number,
): void {
  const end = rowStart[frame + 1]!;
  for (let k = rowStart[frame]!; k < end; k++) sums[place[k]!] = sums[place[k]!]! + weight * evidence[k]!;
}
