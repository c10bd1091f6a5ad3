import { describe, expect, it } from 'vitest';
import { spectralChange } from '../../src/features/spectral-change.js';

describe('spectral change', () => {
  // Source: definition: mean over the bands of the rise of the decimal logarithm of power, over two frames.
  it('is the mean rise in decades; what falls does not count', () => {
    const frames = [
      [1, 1, 1],
      [1, 1, 1],
      [10, 0.1, 1],
      [1000, 1, 1],
    ];
    const change = spectralChange(Float32Array.from(frames.flat()), 3, frames.length);
    expect(change[0]).toBe(0);
    expect(change[1]).toBe(0);
    // the floor is 1e-5 of the strongest band, a hundredth: what is added to small powers lowers the rise a little
    expect(change[2]!).toBeCloseTo(Math.log10(10.01 / 1.01) / 3, 5);
    expect(change[3]!).toBeCloseTo(Math.log10(1000.01 / 1.01) / 3, 5);
  });

  it('stays finite from silence to full scale in every band', () => {
    const bands = 40;
    const power = new Float32Array(3 * bands);
    power.fill(1e6, 2 * bands);
    const change = spectralChange(power, bands, 3);
    // five decades: from the floor to the strongest
    expect(change[2]!).toBeCloseTo(5, 3);
  });
});
