import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { median, quantile, robustSpread } from '../../src/base/index.js';

const finite = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const values = fc.array(finite, { minLength: 1, maxLength: 40 });

describe('quantile', () => {
  // Source: Hyndman & Fan 1996, definition 7: the quantile stands at place 1 + (n − 1) p of the sorted values and is
  // linear between places. With n = 5 and p = 0.4 the place is 2.6; with p = 0.9 it is 4.6.
  it.each([
    [0, 10],
    [0.25, 20],
    [0.4, 26],
    [0.5, 30],
    [0.9, 64],
    [1, 80],
  ])('of 10, 20, 30, 40, 80 at %d is %d, in whatever order they come', (share, expected) => {
    expect(quantile([40, 10, 80, 30, 20], share)).toBeCloseTo(expected, 12);
  });

  // Source: NumPy manual, numpy.percentile, first example (its default method is definition 7).
  it('agrees with the example of a handbook', () => {
    expect(quantile([10, 7, 4, 3, 2, 1], 0.5)).toBe(3.5);
  });

  it('of one value is that value, and of none there is none', () => {
    expect(quantile([7], 0.3)).toBe(7);
    expect(quantile([], 0.5)).toBeNaN();
  });

  // Source: definition of order statistics.
  it('is monotone in the share, lies between the extremes, and leaves its input alone', () => {
    fc.assert(
      fc.property(
        values,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (v, a, b) => {
          const before = [...v];
          const [low, high] = [quantile(v, Math.min(a, b)), quantile(v, Math.max(a, b))];
          expect(low).toBeLessThanOrEqual(high + 1e-9);
          expect(low).toBeGreaterThanOrEqual(Math.min(...v) - 1e-9);
          expect(high).toBeLessThanOrEqual(Math.max(...v) + 1e-9);
          expect(v).toEqual(before);
        },
      ),
    );
  });
});

describe('median', () => {
  it('is the middle value, or the mean of the two in the middle', () => {
    expect(median([9, 1, 5])).toBe(5);
    expect(median(Float32Array.of(4, 1, 2, 8))).toBe(3);
  });

  // Source: breakdown point of one half (Rousseeuw & Leroy 1987).
  it('is not moved beyond the good values while fewer than half are wild', () => {
    const good = [10, 10.5, 11, 11.5];
    expect(median([...good, 1e9, -1e9, 1e9])).toBeLessThanOrEqual(11.5);
    expect(median([...good, 1e9, 1e9, 1e9])).toBeLessThanOrEqual(11.5);
  });
});

describe('robust spread', () => {
  // Source: the textbook example of the median absolute deviation: of 1, 1, 2, 2, 4, 6, 9 it is 1 (from memory);
  // factor 1.4826 = 1 / Φ⁻¹(3/4), Rousseeuw & Croux 1993.
  it('is the median absolute deviation times 1.4826', () => {
    expect(robustSpread([1, 1, 2, 2, 4, 6, 9])).toBeCloseTo(1.4826, 4);
  });

  // Source: tables of the normal distribution: its octiles are 0, ±0.3186, ±0.6745, ±1.1503.
  it('is the standard deviation of normal data', () => {
    const octiles = [-1.1503, -0.6745, -0.3186, 0, 0.3186, 0.6745, 1.1503];
    expect(robustSpread(octiles.map((z) => 50 + 3 * z))).toBeCloseTo(3, 3);
  });

  it('follows a change of unit and ignores a shift', () => {
    fc.assert(
      fc.property(values, fc.double({ min: -50, max: 50, noNaN: true }), finite, (v, factor, shift) => {
        const expected = Math.abs(factor) * robustSpread(v);
        const moved = robustSpread(v.map((x) => factor * x + shift));
        expect(Math.abs(moved - expected)).toBeLessThanOrEqual(1e-6 * (1 + expected + Math.abs(shift)));
      }),
    );
  });
});
