import { describe, expect, it } from 'vitest';
import { besselI0 } from '../../src/base/index.js';

describe('the modified Bessel function of order 0', () => {
  // Source: Abramowitz & Stegun, table 9.8, which gives e^−x I0(x), from memory; DLMF 10.25 for the series.
  it.each([
    [0, 1],
    [1, 1.2660658778],
    [2, 2.2795853023],
    [5, 27.2398718236],
  ])('at %d is %d', (x, value) => {
    expect(besselI0(x) / value).toBeCloseTo(1, 9);
  });
});
