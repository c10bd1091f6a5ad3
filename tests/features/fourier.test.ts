import fc from 'fast-check';
import FFT from 'fft.js';
import { describe, expect, it } from 'vitest';
import { createTransform, transformSize } from '../../src/features/fourier.js';

const SIZES = [64, 96, 128, 192, 256, 384, 512, 768, 1024, 1536, 2048, 3072];

const numbers = (count: number) =>
  fc
    .array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: count, maxLength: count })
    .map((values) => Float64Array.from(values));

const transformed = (size: number, input: Float64Array): Float64Array => {
  const output = new Float64Array(2 * size);
  createTransform(size).transform(input, output);
  return output;
};

const farthest = (a: ArrayLike<number>, b: ArrayLike<number>): number => {
  let most = 0;
  for (let i = 0; i < a.length; i++) most = Math.max(most, Math.abs(a[i]! - b[i]!));
  return most;
};

/** Source: definition of the discrete Fourier transform, X[k] = Σ x[n] exp(−2πikn / N), summed as it stands. */
function byDefinition(size: number, input: Float64Array): Float64Array {
  const output = new Float64Array(2 * size);
  for (let k = 0; k < size; k++) {
    for (let n = 0; n < size; n++) {
      const angle = (-2 * Math.PI * ((k * n) % size)) / size;
      const [re, im] = [input[2 * n]!, input[2 * n + 1]!];
      output[2 * k] = output[2 * k]! + re * Math.cos(angle) - im * Math.sin(angle);
      output[2 * k + 1] = output[2 * k + 1]! + re * Math.sin(angle) + im * Math.cos(angle);
    }
  }
  return output;
}

describe('the Fourier transform', () => {
  it.each(SIZES.filter((size) => size <= 384))('of %d points is the sum that defines it', (size) => {
    fc.assert(
      fc.property(numbers(2 * size), (input) => {
        expect(farthest(transformed(size, input), byDefinition(size, input))).toBeLessThan(1e-11 * size);
      }),
      { numRuns: 3 },
    );
  });

  // Source: an independent implementation, the package fft.js (radix 4, in place).
  it.each(SIZES.filter((size) => size % 3 !== 0))('of %d points agrees with an independent one', (size) => {
    fc.assert(
      fc.property(numbers(2 * size), (input) => {
        const reference = new FFT(size);
        const output = reference.createComplexArray();
        reference.transform(output, input);
        expect(farthest(transformed(size, input), output)).toBeLessThan(1e-12 * size);
      }),
      { numRuns: 5 },
    );
  });

  it.each(SIZES)('of %d points keeps energy, and may be used again', (size) => {
    // Source: Parseval's theorem.
    const transform = createTransform(size);
    const energy = (values: Float64Array) => values.reduce((sum, x) => sum + x * x, 0);
    fc.assert(
      fc.property(numbers(2 * size), (input) => {
        const output = new Float64Array(2 * size);
        transform.transform(input, output);
        expect(Math.abs(energy(output) / size - energy(input))).toBeLessThan(1e-10 * size);
      }),
      { numRuns: 5 },
    );
  });

  it('has a size for any need, at most half as large again', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5000 }), (least) => {
        const size = transformSize(least);
        expect(size).toBeGreaterThanOrEqual(least);
        if (least > 64) expect(size).toBeLessThan(1.5 * least);
      }),
    );
  });
});
