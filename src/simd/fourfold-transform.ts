import type { Loops } from './open-loops.js';

/** Passes over the data, each told the arrays it reads, writes and takes its factors from (in bytes). */
type Pass = (loops: Loops, from: number, to: number, twiddles: number) => void;

/** Four complex transforms of one size, side by side. */
export interface FourfoldTransform {
  readonly size: number;
  /** numbers of memory it needs for its factors, in `twiddles`, to be written once */
  readonly twiddles: Float32Array;
  /**
   * Complex numbers are eight floats: four real parts, then four imaginary ones.
   *
   * @param loops what is opened
   * @param twiddles the factors in their memory
   * @param arrays of as many complex numbers as the size: the first is read, the last two are written
   * @returns whichever of the last two holds the transforms, not scaled
   */
  run(
    loops: Loops,
    twiddles: Float32Array,
    arrays: readonly [input: Float32Array, one: Float32Array, other: Float32Array],
  ): Float32Array;
}

const LEAST_SIZE = 64;

/**
 * @param least so many points are needed
 * @returns the smallest size there is a transform of: a power of two, or three times one
 */
export function transformSize(least: number): number {
  let size = LEAST_SIZE;
  while (size < least) size *= 2;
  return size > LEAST_SIZE && 0.75 * size >= least ? 0.75 * size : size;
}

/**
 * Complex discrete Fourier transforms, X[k] = Σ x[n] exp(−2πikn / size), in single precision.
 *
 * @param size from {@link transformSize}
 * @returns what does them
 *
 * Source: Stockham's form of the fast Fourier transform, which needs no reordering (Van Loan, Computational Frameworks for
 * the Fast Fourier Transform, 1992), with radices 3, 4 and, for what is left over, 2.
 */
export function fourfoldTransform(size: number): FourfoldTransform {
  const { passes, twiddles } = planPasses(size);
  return {
    size,
    twiddles,
    run(loops, kept, [input, one, other]) {
      let [from, to] = [input, one];
      for (const pass of passes) {
        pass(loops, from.byteOffset, to.byteOffset, kept.byteOffset);
        [from, to] = [to, to === one ? other : one];
      }
      return from;
    },
  };
}

function planPasses(size: number): { readonly passes: readonly Pass[]; readonly twiddles: Float32Array } {
  const passes: Pass[] = [];
  const factors: number[] = [];
  let [left, stride] = [size, 1];
  const add = (radix: number, passOf: (count: number, stride: number, at: number) => Pass): void => {
    passes.push(passOf(left / radix, stride, Float32Array.BYTES_PER_ELEMENT * factors.length));
    for (const factor of twiddlesOf(radix, left)) factors.push(factor);
    stride *= radix;
    left /= radix;
  };
  if (left % 3 === 0) add(3, (count, _, at) => (loops, x, y, w) => loops.firstByThree(x, y, count, w + at));
  while (left >= 4) add(4, (count, row, at) => (loops, x, y, w) => loops.byFour(x, y, count, row, w + at));
  if (left === 2) add(2, (_, row) => (loops, x, y) => loops.lastByTwo(x, y, row));
  return { passes, twiddles: Float32Array.from(factors) };
}

/** For each group p the factors exp(−2πikp / length), k from 1 to radix − 1. */
function twiddlesOf(radix: number, length: number): number[] {
  const twiddles: number[] = [];
  for (let p = 0; p < length / radix; p++) {
    for (let k = 1; k < radix; k++) {
      const angle = (-2 * Math.PI * k * p) / length;
      twiddles.push(Math.cos(angle), Math.sin(angle));
    }
  }
  return twiddles;
}
