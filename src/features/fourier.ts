/** A transform of one fixed size; arrays hold interleaved real and imaginary parts. */
export interface FourierTransform {
  readonly size: number;
  /**
   * @param input complex numbers, as many as the size; not changed
   * @param output where their transform goes, not scaled; another array than `input`
   */
  transform(input: Float64Array, output: Float64Array): void;
}

/** One pass over the data: `count` groups of numbers `stride` apart are turned into each other. */
interface Stage {
  readonly run: (input: Float64Array, output: Float64Array, stage: Stage) => void;
  readonly count: number;
  readonly stride: number;
  readonly twiddles: Float64Array;
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
 * Complex discrete Fourier transform, X[k] = Σ x[n] exp(−2πikn / size).
 *
 * @param size from {@link transformSize}
 * @returns a transform with memory of its own
 *
 * Source: Stockham's form of the fast Fourier transform, which needs no reordering (Van Loan, Computational Frameworks for
 * the Fast Fourier Transform, 1992), with radices 3, 4 and, for what is left over, 8.
 */
export function createTransform(size: number): FourierTransform {
  const stages = planStages(size);
  const passing = [new Float64Array(2 * size), new Float64Array(2 * size)] as const;
  return {
    size,
    transform(input, output) {
      let from = input;
      for (let i = 0; i < stages.length; i++) {
        const stage = stages[i]!;
        const to = i === stages.length - 1 ? output : passing[(i & 1) as 0 | 1];
        stage.run(from, to, stage);
        from = to;
      }
    },
  };
}

function planStages(size: number): Stage[] {
  const stages: Stage[] = [];
  let left = size;
  let stride = 1;
  const add = (radix: number, run: Stage['run']): void => {
    stages.push({ run, count: left / radix, stride, twiddles: twiddlesOf(radix, left) });
    stride *= radix;
    left /= radix;
  };
  if (left % 3 === 0) add(3, firstByThree);
  while (left > 8) add(4, byFour);
  add(left, left === 8 ? lastByEight : lastByFour);
  return stages;
}

/** For each group p the factors exp(−2πikp / length), k from 1 to radix − 1. */
function twiddlesOf(radix: number, length: number): Float64Array {
  const twiddles: number[] = [];
  for (let p = 0; p < length / radix; p++) {
    for (let k = 1; k < radix; k++) {
      const angle = (-2 * Math.PI * k * p) / length;
      twiddles.push(Math.cos(angle), Math.sin(angle));
    }
  }
  return Float64Array.from(twiddles);
}

const SIN_60 = Math.sqrt(3) / 2;

function firstByThree(x: Float64Array, y: Float64Array, { count, twiddles }: Stage): void {
  for (let p = 0; p < count; p++) {
    const a = 2 * p;
    const b = a + 2 * count;
    const c = b + 2 * count;
    const sumRe = x[b]! + x[c]!;
    const sumIm = x[b + 1]! + x[c + 1]!;
    const midRe = x[a]! - sumRe / 2;
    const midIm = x[a + 1]! - sumIm / 2;
    const turnRe = SIN_60 * (x[b + 1]! - x[c + 1]!);
    const turnIm = SIN_60 * (x[c]! - x[b]!);
    const w = 4 * p;
    const to = 6 * p;
    y[to] = x[a]! + sumRe;
    y[to + 1] = x[a + 1]! + sumIm;
    y[to + 2] = (midRe + turnRe) * twiddles[w]! - (midIm + turnIm) * twiddles[w + 1]!;
    y[to + 3] = (midRe + turnRe) * twiddles[w + 1]! + (midIm + turnIm) * twiddles[w]!;
    y[to + 4] = (midRe - turnRe) * twiddles[w + 2]! - (midIm - turnIm) * twiddles[w + 3]!;
    y[to + 5] = (midRe - turnRe) * twiddles[w + 3]! + (midIm - turnIm) * twiddles[w + 2]!;
  }
}

function byFour(x: Float64Array, y: Float64Array, { count, stride, twiddles }: Stage): void {
  const row = 2 * stride;
  const step = row * count;
  for (let p = 0; p < count; p++) {
    const w = 6 * p;
    const re1 = twiddles[w]!;
    const im1 = twiddles[w + 1]!;
    const re2 = twiddles[w + 2]!;
    const im2 = twiddles[w + 3]!;
    const re3 = twiddles[w + 4]!;
    const im3 = twiddles[w + 5]!;
    for (let a = row * p, end = a + row, to = 4 * a; a < end; a += 2, to += 2) {
      const b = a + step;
      const c = b + step;
      const d = c + step;
      const acRe = x[a]! + x[c]!;
      const acIm = x[a + 1]! + x[c + 1]!;
      const acOffRe = x[a]! - x[c]!;
      const acOffIm = x[a + 1]! - x[c + 1]!;
      const bdRe = x[b]! + x[d]!;
      const bdIm = x[b + 1]! + x[d + 1]!;
      const turnRe = x[b + 1]! - x[d + 1]!;
      const turnIm = x[d]! - x[b]!;
      const to1 = to + row;
      const to2 = to1 + row;
      const to3 = to2 + row;
      y[to] = acRe + bdRe;
      y[to + 1] = acIm + bdIm;
      y[to1] = (acOffRe + turnRe) * re1 - (acOffIm + turnIm) * im1;
      y[to1 + 1] = (acOffRe + turnRe) * im1 + (acOffIm + turnIm) * re1;
      y[to2] = (acRe - bdRe) * re2 - (acIm - bdIm) * im2;
      y[to2 + 1] = (acRe - bdRe) * im2 + (acIm - bdIm) * re2;
      y[to3] = (acOffRe - turnRe) * re3 - (acOffIm - turnIm) * im3;
      y[to3 + 1] = (acOffRe - turnRe) * im3 + (acOffIm - turnIm) * re3;
    }
  }
}

function lastByFour(x: Float64Array, y: Float64Array, { stride }: Stage): void {
  const row = 2 * stride;
  for (let a = 0; a < row; a += 2) {
    const b = a + row;
    const c = b + row;
    const d = c + row;
    const acRe = x[a]! + x[c]!;
    const acIm = x[a + 1]! + x[c + 1]!;
    const acOffRe = x[a]! - x[c]!;
    const acOffIm = x[a + 1]! - x[c + 1]!;
    const bdRe = x[b]! + x[d]!;
    const bdIm = x[b + 1]! + x[d + 1]!;
    const turnRe = x[b + 1]! - x[d + 1]!;
    const turnIm = x[d]! - x[b]!;
    y[a] = acRe + bdRe;
    y[a + 1] = acIm + bdIm;
    y[b] = acOffRe + turnRe;
    y[b + 1] = acOffIm + turnIm;
    y[c] = acRe - bdRe;
    y[c + 1] = acIm - bdIm;
    y[d] = acOffRe - turnRe;
    y[d + 1] = acOffIm - turnIm;
  }
}

/** Two fours, of the even and of the odd rows, joined by the eighth roots of one. */
function lastByEight(x: Float64Array, y: Float64Array, { stride }: Stage): void {
  const row = 2 * stride;
  for (let a = 0; a < row; a += 2) {
    const b = a + row;
    const c = b + row;
    const d = c + row;
    const e = d + row;
    const f = e + row;
    const g = f + row;
    const h = g + row;
    const aeRe = x[a]! + x[e]!;
    const aeIm = x[a + 1]! + x[e + 1]!;
    const aeOffRe = x[a]! - x[e]!;
    const aeOffIm = x[a + 1]! - x[e + 1]!;
    const cgRe = x[c]! + x[g]!;
    const cgIm = x[c + 1]! + x[g + 1]!;
    const cgTurnRe = x[c + 1]! - x[g + 1]!;
    const cgTurnIm = x[g]! - x[c]!;
    const bfRe = x[b]! + x[f]!;
    const bfIm = x[b + 1]! + x[f + 1]!;
    const bfOffRe = x[b]! - x[f]!;
    const bfOffIm = x[b + 1]! - x[f + 1]!;
    const dhRe = x[d]! + x[h]!;
    const dhIm = x[d + 1]! + x[h + 1]!;
    const dhTurnRe = x[d + 1]! - x[h + 1]!;
    const dhTurnIm = x[h]! - x[d]!;
    const odd1Re = Math.SQRT1_2 * (bfOffRe + dhTurnRe + bfOffIm + dhTurnIm);
    const odd1Im = Math.SQRT1_2 * (bfOffIm + dhTurnIm - bfOffRe - dhTurnRe);
    const odd3Re = Math.SQRT1_2 * (bfOffIm - dhTurnIm - bfOffRe + dhTurnRe);
    const odd3Im = Math.SQRT1_2 * (dhTurnRe - bfOffRe + dhTurnIm - bfOffIm);
    y[a] = aeRe + cgRe + (bfRe + dhRe);
    y[a + 1] = aeIm + cgIm + (bfIm + dhIm);
    y[b] = aeOffRe + cgTurnRe + odd1Re;
    y[b + 1] = aeOffIm + cgTurnIm + odd1Im;
    y[c] = aeRe - cgRe + (bfIm - dhIm);
    y[c + 1] = aeIm - cgIm + (dhRe - bfRe);
    y[d] = aeOffRe - cgTurnRe + odd3Re;
    y[d + 1] = aeOffIm - cgTurnIm + odd3Im;
    y[e] = aeRe + cgRe - (bfRe + dhRe);
    y[e + 1] = aeIm + cgIm - (bfIm + dhIm);
    y[f] = aeOffRe + cgTurnRe - odd1Re;
    y[f + 1] = aeOffIm + cgTurnIm - odd1Im;
    y[g] = aeRe - cgRe - (bfIm - dhIm);
    y[g + 1] = aeIm - cgIm - (dhRe - bfRe);
    y[h] = aeOffRe - cgTurnRe - odd3Re;
    y[h + 1] = aeOffIm - cgTurnIm - odd3Im;
  }
}
