import { describe, expect, it } from 'vitest';
import { listen } from '../../src/features/index.js';
import { join, noise, RATE, silence, sum, takeOf, tone } from '../helpers/tones.js';

describe('the floor of a take', () => {
  it('is not the softest notes of one that never falls silent', () => {
    const notes = Array.from({ length: 12 }, (_, i) => tone(69 + (i % 5), 0.5, 'sine', i % 3 === 0 ? 0.03 : 0.3));
    const { noiseFloorDb } = listen(takeOf(join(...notes)));
    // Source: a sine of amplitude 0.03 has −33.5 dBFS, one of 0.3 has −13.5; the room is at least 40 dB under the loud end
    expect(noiseFloorDb).toBeLessThan(-52);
  });

  it('is the room of one that does', () => {
    const notes = Array.from({ length: 8 }, () => join(tone(69, 0.5, 'sine', 0.3), silence(0.2)));
    const samples = join(...notes);
    const { noiseFloorDb } = listen(takeOf(sum(samples, noise(samples.length / RATE, -50))));
    expect(Math.abs(noiseFloorDb + 50)).toBeLessThan(2);
  });
});
