import { describe, expect, it } from 'vitest';
import { soundFacts } from '../../src/review/sound-facts.js';

describe('what is kept of a take’s loudness', () => {
  // 20 frames of 10 ms: two stretches of 50 ms, then silence. Mean powers by hand: −20 dB and (0.1 × 4 + 0) / 5 = −10.97 dB.
  const levelDb = Float32Array.from([
    ...new Array(5).fill(-20),
    ...new Array(4).fill(-10),
    ...new Array(11).fill(Number.NEGATIVE_INFINITY),
  ]);
  const facts = soundFacts({ durationSeconds: 0.2000004, kWeightedPower: [0.01, 0] }, { hopSeconds: 0.01, levelDb });

  it('is the mean power of each twentieth of a second, null for silence', () => {
    expect(facts).toMatchObject({ durationSeconds: 0.2, levelHopSeconds: 0.05 });
    expect(facts.levelsDb.slice(0, 4)).toEqual([-20, -11, null, null]);
  });

  // 10 log10 of 0.01 is −20.
  it('gives K-weighted powers as decibels', () => {
    expect(facts.kWeightedDb).toEqual([-20, null]);
  });
});
