import { describe, expect, it } from 'vitest';
import { findBoundaries } from '../../src/align/grid/find-boundaries.js';
import { buildPitchGrid } from '../../src/align/grid/pitch-grid.js';
import type { Features } from '../../src/features/index.js';
import { PITCH_HOP, pitched, sounding } from '../helpers/frames.js';
import { framesOf, handGrid } from '../helpers/hand-grid.js';

/**
 * Evidence of pitch a frame, and the moments at which a note may begin, from frames written by hand.
 *
 * Source: definition; the limits are those of the grid, typed here by hand. A part below A2 has no harmonics looked at.
 */
const LOW = 40;

/** Evidence of each semitone from 50 to 80 in a frame of a sound that lasts. */
function evidenceOf(features: Features, frame: number, tuningCents = 0): Record<number, number> {
  const grid = buildPitchGrid(features, tuningCents, 50, 80, LOW);
  const found: Record<number, number> = {};
  for (let k = grid.rowStart[frame]!; k < grid.rowStart[frame + 1]!; k++)
    found[grid.place[k]! + 50] = grid.salience[k]!;
  return found;
}

describe('evidence of a semitone', () => {
  const one = (midi: number, clarity = 0.9) => evidenceOf(pitched(sounding(2, [0, 2, -20]), 0, 2, midi, clarity), 100);

  it('is as clear as the period within 0.35 of it, and falls to nothing at 0.8', () => {
    expect(one(60)).toEqual({ 60: expect.closeTo(0.9, 5) });
    expect(one(60.34)).toEqual({ 60: expect.closeTo(0.9, 5), 61: expect.closeTo((0.9 * (0.8 - 0.66)) / 0.45, 3) });
    expect(one(60.5)).toEqual({ 60: expect.closeTo(0.6, 4), 61: expect.closeTo(0.6, 4) });
    expect(one(59.9)).toEqual({ 60: expect.closeTo(0.9, 5) });
    expect(one(60, 1.2)).toEqual({ 60: 1 });
  });

  it('has the tuning of the player taken out', () => {
    expect(evidenceOf(pitched(sounding(2, [0, 2, -20]), 0, 2, 60.4), 100, 40)).toEqual({ 60: expect.closeTo(0.9, 4) });
  });

  it('is less for candidates behind the first, up to the first that is missing', () => {
    const second = pitched(pitched(sounding(2, [0, 2, -20]), 0, 2, 60), 0, 2, 72, 0.9, 1);
    expect(evidenceOf(second, 100)).toEqual({ 60: expect.closeTo(0.9, 5), 72: expect.closeTo(0.78, 5) });
    const gap = pitched(pitched(sounding(2, [0, 2, -20]), 0, 2, 60), 0, 2, 72, 0.9, 2);
    expect(evidenceOf(gap, 100)).toEqual({ 60: expect.closeTo(0.9, 5) });
  });

  it('ends at the edges of the grid', () => {
    expect(one(50)).toEqual({ 50: expect.closeTo(0.9, 5) });
    expect(one(80)).toEqual({ 80: expect.closeTo(0.9, 5) });
    expect(one(49)).toEqual({});
    expect(one(81)).toEqual({});
  });
});

describe('what sounds in a frame', () => {
  const grid = (features: Features) => buildPitchGrid(features, 0, 50, 80, LOW);

  it('is its strongest semitone, or nothing', () => {
    const features = pitched(pitched(sounding(2, [0, 1, -20]), 0, 1, 60), 0, 1, 72, 1.1, 1);
    const { strongest, frames, lowestMidi, pitches, hopSeconds } = grid(features);
    expect([strongest[100], strongest[300]]).toEqual([72, -1]);
    expect([frames, lowestMidi, pitches, hopSeconds]).toEqual([401, 50, 31, PITCH_HOP]);
  });

  it('has the mean power around it as its level', () => {
    const { levelDb } = grid(sounding(2, [0, 1, -20], [1, 2, -40]));
    expect([levelDb[100], levelDb[300]]).toEqual([expect.closeTo(-20, 3), expect.closeTo(-40, 3)]);
    // frame 200 is at 1 s; of levels two hops to both sides, 2 ms each, two or three are soft
    expect(levelDb[200]!).toBeGreaterThan(-26);
    expect(levelDb[200]!).toBeLessThan(-20.5);
  });

  it('sounds from 6 dB above the floor, wholly from 14 dB on, where a period is heard', () => {
    const sounds = (db: number, clarity = 0.9) =>
      grid(pitched(sounding(2, [0, 2, db]), 0, 2, 60, clarity)).sounding[100];
    // the floor lies at −80 dB
    expect([sounds(-75), sounds(-70), sounds(-66), sounds(-30)]).toEqual([
      0,
      expect.closeTo(0.5, 2),
      expect.closeTo(1, 2),
      1,
    ]);
    expect([sounds(-30, 0.44), sounds(-30, 0.46)]).toEqual([0, 1]);
  });

  it('is what is left in the room where it lies 48 dB below the loud notes', () => {
    const features = pitched(sounding(2, [0, 1.5, -10], [1.5, 2, -59]), 0, 2, 60);
    expect(grid(features).sounding[380]).toBe(0);
    const nearer = pitched(sounding(2, [0, 1.5, -10], [1.5, 2, -54]), 0, 2, 60);
    expect(grid(nearer).sounding[380]).toBeCloseTo(0.5, 2);
  });

  it('counts less where it falls quicker than 25 dB a second', () => {
    // 0.1 s behind a fall by 20 dB the envelope has come down by 2.5: 7.5 dB beyond the 10 are half of 15
    const fallen = pitched(sounding(2, [0, 1, -20], [1, 2, -40]), 0, 2, 60);
    expect(grid(fallen).voicing[220]).toBeCloseTo(1 - (20 - 2.5 - 10) / 15, 1);
    expect(grid(fallen).voicing[300]).toBeCloseTo(1, 1);
    const deep = pitched(sounding(2, [0, 1, -20], [1, 2, -50]), 0, 2, 60);
    expect(grid(deep).voicing[204]).toBeCloseTo(0.1, 5);
  });
});

describe('a moment at which a note may begin', () => {
  const quiet = (frames: number) => ({ noiseFloorDb: -80, change: new Float32Array(frames) }) as unknown as Features;

  it('is where the pitch changes', () => {
    const grid = handGrid(framesOf([60, 40], [64, 40]));
    const { frame, pitchChange, attack } = findBoundaries(quiet(80), grid);
    expect([...frame]).toEqual([40]);
    expect(pitchChange[0]).toBeGreaterThan(0.9);
    expect(attack[0]).toBe(0);
    expect([...findBoundaries(quiet(80), handGrid(framesOf([60, 80]))).frame]).toEqual([]);
  });

  it('is where the level rises, or the sound changes', () => {
    const grid = handGrid(framesOf([60, 80]));
    const levelDb = Float32Array.from({ length: 80 }, (_, f) => (f < 40 ? -40 : -20));
    const risen = findBoundaries(quiet(80), { ...grid, levelDb });
    expect(risen.frame).toHaveLength(1);
    expect(Math.abs(risen.frame[0]! - 40)).toBeLessThanOrEqual(3);
    expect(risen.attack[0]).toBe(1);
    const changed = {
      ...quiet(80),
      change: Float32Array.from({ length: 80 }, (_, f) => (f === 30 ? 0.125 : 0)),
    } as Features;
    const { frame, attack } = findBoundaries(changed, grid);
    // half of a clear change: six tenths of a half
    expect([[...frame], attack[0]]).toEqual([[30], expect.closeTo(0.3, 5)]);
  });

  it('is none where it cannot be heard', () => {
    const grid = handGrid(framesOf([60, 80]));
    const levelDb = Float32Array.from({ length: 80 }, (_, f) => (f < 40 ? -90 : -75));
    expect([...findBoundaries(quiet(80), { ...grid, levelDb }).frame]).toEqual([]);
  });

  it('is the stronger of two within 22 ms', () => {
    const grid = handGrid(framesOf([60, 80]));
    const change = (at: Record<number, number>) =>
      ({ ...quiet(80), change: Float32Array.from({ length: 80 }, (_, f) => at[f] ?? 0) }) as Features;
    expect([...findBoundaries(change({ 30: 0.1, 34: 0.2 }), grid).frame]).toEqual([34]);
    expect([...findBoundaries(change({ 30: 0.1, 35: 0.2 }), grid).frame]).toEqual([30, 35]);
    expect([...findBoundaries(change({ 30: 0.2, 33: 0.2 }), grid).frame]).toEqual([30]);
    // a tenth is the least: 0.6 · 0.04 ÷ 0.25 = 0.096
    expect([...findBoundaries(change({ 30: 0.04 }), grid).frame]).toEqual([]);
    expect([...findBoundaries(change({ 30: 0.043 }), grid).frame]).toEqual([30]);
  });
});
