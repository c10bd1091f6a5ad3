import fc from 'fast-check';
import FFT from 'fft.js';
import { describe, expect, it } from 'vitest';
import { fourfoldTransform, openLoops, transformSize } from '../../src/simd/index.js';

const SIZES = [64, 96, 128, 192, 256, 384, 512, 768, 1024, 1536, 2048, 3072];
const LANES = 4;

/** Real and imaginary parts, one after the other. */
const numbers = (count: number) =>
  fc
    .array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: count, maxLength: count })
    .map((values) => Float32Array.from(values));
const four = (size: number) => fc.tuple(numbers(2 * size), numbers(2 * size), numbers(2 * size), numbers(2 * size));

/** Four signals, transformed side by side. */
function transformed(size: number, inputs: readonly Float32Array[]): Float32Array[] {
  const fourier = fourfoldTransform(size);
  const length = 2 * LANES * size;
  const { loops, memory } = openLoops({
    ...{ input: length, one: length, other: length },
    twiddles: fourier.twiddles.length,
  });
  memory.twiddles.set(fourier.twiddles);
  inputs.forEach((input, lane) => {
    for (let n = 0; n < 2 * size; n++) memory.input[LANES * n + lane] = input[n]!;
  });
  const out = fourier.run(loops, memory.twiddles, [memory.input, memory.one, memory.other]);
  return inputs.map((_, lane) => Float32Array.from({ length: 2 * size }, (_, n) => out[LANES * n + lane]!));
}

const farthest = (a: ArrayLike<number>, b: ArrayLike<number>): number => {
  let most = 0;
  for (let i = 0; i < a.length; i++) most = Math.max(most, Math.abs(a[i]! - b[i]!));
  return most;
};

/** What rounding may come to: a number has 24 bits, errors of the few passes add up as the root of the size does. */
const rounding = (size: number): number => 2e-6 * Math.sqrt(size);

/** Source: definition of the discrete Fourier transform, X[k] = Σ x[n] exp(−2πikn / N), summed as it stands. */
function byDefinition(size: number, input: Float32Array): Float64Array {
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

describe('four Fourier transforms side by side', () => {
  it.each(SIZES.filter((size) => size <= 384))('of %d points are the sums that define them', (size) => {
    fc.assert(
      fc.property(four(size), (inputs) => {
        transformed(size, inputs).forEach((output, lane) => {
          expect(farthest(output, byDefinition(size, inputs[lane]!))).toBeLessThan(rounding(size));
        });
      }),
      { numRuns: 2 },
    );
  });

  // Source: an independent implementation, the package fft.js (radix 4, in place).
  it.each(SIZES.filter((size) => size % 3 !== 0))('of %d points agree with an independent one', (size) => {
    fc.assert(
      fc.property(four(size), (inputs) => {
        const reference = new FFT(size);
        transformed(size, inputs).forEach((output, lane) => {
          const expected = reference.createComplexArray();
          reference.transform(expected, inputs[lane]!);
          expect(farthest(output, expected)).toBeLessThan(rounding(size));
        });
      }),
      { numRuns: 3 },
    );
  });

  it.each(SIZES)('of %d points keep the energy of each lane', (size) => {
    // Source: Parseval's theorem.
    const energy = (values: Float32Array) => values.reduce((sum, x) => sum + x * x, 0);
    fc.assert(
      fc.property(four(size), (inputs) => {
        transformed(size, inputs).forEach((output, lane) => {
          const before = energy(inputs[lane]!);
          expect(Math.abs(energy(output) / size - before)).toBeLessThan(1e-5 * (before + 1));
        });
      }),
      { numRuns: 3 },
    );
  });

  it('have a size for any need, at most half as large again', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5000 }), (least) => {
        const size = transformSize(least);
        expect(size).toBeGreaterThanOrEqual(least);
        if (least > 64) expect(size).toBeLessThan(1.5 * least);
      }),
    );
  });
});
