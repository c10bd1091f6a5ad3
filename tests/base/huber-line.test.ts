import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitHuberLine } from '../../src/base/index.js';

// Source: Anscombe 1973, "Graphs in Statistical Analysis", data set III: a straight line and one point far off it.
const ANSCOMBE_X = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5];
const ANSCOMBE_Y = [7.46, 6.77, 12.74, 7.11, 7.81, 8.84, 6.08, 5.39, 8.15, 6.42, 5.73];

/** Least squares by the normal equations, as in any textbook. */
function leastSquares(x: readonly number[], y: readonly number[]): { slope: number; intercept: number } {
  const n = x.length;
  const sum = (f: (i: number) => number): number => x.reduce((total, _, i) => total + f(i), 0);
  const [sx, sy, sxy, sxx] = [sum((i) => x[i]!), sum((i) => y[i]!), sum((i) => x[i]! * y[i]!), sum((i) => x[i]! ** 2)];
  const slope = (n * sxy - sx * sy) / (n * sxx - sx * sx);
  return { slope, intercept: (sy - slope * sx) / n };
}

const slope = fc.double({ min: -30, max: 30, noNaN: true });
const abscissae = fc.uniqueArray(fc.integer({ min: -50, max: 50 }), { minLength: 3, maxLength: 20 });

describe('a Huber line', () => {
  it('through points of a line is that line, like least squares, without error', () => {
    fc.assert(
      fc.property(abscissae, slope, slope, (x, a, b) => {
        const y = x.map((v) => a * v + b);
        const line = fitHuberLine(x, y);
        const plain = leastSquares(x, y);
        for (const fitted of [line, plain]) {
          expect(fitted.slope).toBeCloseTo(a, 6);
          expect(fitted.intercept).toBeCloseTo(b, 5);
        }
        expect(line.slopeError).toBeLessThan(1e-6);
      }),
    );
  });

  // Source: worked by hand. The residuals +1, −1, −1, +1 are orthogonal to 1 and x, so least squares gives 2x + 1; none
  // is beyond 1.345 robust deviations, so Huber's weights are all 1. Σ(x − x̄)² = 5, s² = 4 / 2: error √(2 / 5).
  it('is least squares when no residual is large', () => {
    const line = fitHuberLine([0, 1, 2, 3], [2, 2, 4, 8]);
    expect(line.slope).toBeCloseTo(2, 12);
    expect(line.intercept).toBeCloseTo(1, 12);
    expect(line.slopeError).toBeCloseTo(Math.sqrt(2 / 5), 12);
  });

  it('ignores the one point of Anscombe’s third set that leads least squares astray', () => {
    const plain = leastSquares(ANSCOMBE_X, ANSCOMBE_Y);
    // Source: Anscombe 1973: least squares gives y = 3 + 0.5 x; the other ten points lie on y = 4 + 0.346 x.
    expect(plain.slope).toBeCloseTo(0.5, 2);
    const line = fitHuberLine(ANSCOMBE_X, ANSCOMBE_Y);
    expect(line.slope).toBeCloseTo(0.346, 2);
    expect(line.intercept).toBeCloseTo(4.0, 1);
  });

  // Source: equivariance of regression M-estimates (Huber 1981).
  it('follows changes of unit and origin of both axes', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 20, noNaN: true }), slope, slope, (factor, shift, tilt) => {
        const before = fitHuberLine(ANSCOMBE_X, ANSCOMBE_Y);
        const after = fitHuberLine(
          ANSCOMBE_X,
          ANSCOMBE_Y.map((y, i) => factor * y + shift + tilt * ANSCOMBE_X[i]!),
        );
        expect(after.slope).toBeCloseTo(factor * before.slope + tilt, 4);
        expect(after.intercept).toBeCloseTo(factor * before.intercept + shift, 3);
      }),
      { numRuns: 30 },
    );
  });

  it('through two points has no error to speak of, and says so', () => {
    const line = fitHuberLine([1, 3], [10, 4]);
    expect(line.slope).toBeCloseTo(-3, 12);
    expect(line.slopeError).toBeNaN();
  });
});
