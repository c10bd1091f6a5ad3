// What comes before and after the transforms of overlapping frames. Sixteen frames are worked on at a time, in four vectors of four
// lanes: frames 0–3 and 4–7 are the real and imaginary parts of one fourfold transform, 8–11 and 12–15 those of another.

import { transposed0, transposed1, transposed2, transposed3 } from './transpose';

const COMPLEX: usize = 32;
const IMAGINARY: usize = 16;

function windowFour(from: usize, hop: usize, window: usize, length: i32, into: usize): void {
  for (let i: i32 = 0; i < length; i += 4) {
    const at = from + 4 * i;
    const a = v128.load(at);
    const b = v128.load(at + hop);
    const c = v128.load(at + 2 * hop);
    const d = v128.load(at + 3 * hop);
    const to = into + COMPLEX * i;
    v128.store(to, f32x4.mul(transposed0(a, b, c, d), v128.load32_splat(window + 4 * i)));
    v128.store(to, f32x4.mul(transposed1(a, b, c, d), v128.load32_splat(window + 4 * i, 4)), 32);
    v128.store(to, f32x4.mul(transposed2(a, b, c, d), v128.load32_splat(window + 4 * i, 8)), 64);
    v128.store(to, f32x4.mul(transposed3(a, b, c, d), v128.load32_splat(window + 4 * i, 12)), 96);
  }
}

/**
 * Eight tapered frames as one fourfold complex signal.
 *
 * @param samples the first sample of the first frame
 * @param hop samples from one frame to the next
 * @param window taper, a multiple of four numbers
 * @param length how many
 * @param into where the complex numbers go; what follows them is not touched
 */
export function windowFrames(samples: usize, hop: i32, window: usize, length: i32, into: usize): void {
  windowFour(samples, 4 * hop, window, length, into);
  windowFour(samples + 16 * hop, 4 * hop, window, length, into + IMAGINARY);
}

/**
 * Power spectra of the real signals in the two parts of a transform.
 *
 * @param spectrum complex numbers
 * @param size of the transform
 * @param firstBin the lowest that is wanted
 * @param real where the power of the real parts goes, a vector for each bin from 0 to half the size
 * @param imaginary where that of the imaginary parts goes
 * @param sums two vectors: twice the sums over all bins, where the bin at half the size has no mirror
 */
export function splitPowers(
  spectrum: usize,
  size: i32,
  firstBin: i32,
  real: usize,
  imaginary: usize,
  sums: usize,
): void {
  const quarter = f32x4.splat(0.25);
  const half = size / 2;
  let sumA = f32x4.splat(0);
  let sumB = f32x4.splat(0);
  let lastA = sumA;
  let lastB = sumB;
  for (let k: i32 = firstBin; k <= half; k++) {
    const x = spectrum + COMPLEX * k;
    const y = spectrum + COMPLEX * (size - k);
    const xRe = v128.load(x);
    const xIm = v128.load(x, IMAGINARY);
    const yRe = v128.load(y);
    const yIm = v128.load(y, IMAGINARY);
    const evenRe = f32x4.add(xRe, yRe);
    const oddIm = f32x4.sub(xIm, yIm);
    const evenIm = f32x4.add(xIm, yIm);
    const oddRe = f32x4.sub(xRe, yRe);
    lastA = f32x4.mul(quarter, f32x4.add(f32x4.mul(evenRe, evenRe), f32x4.mul(oddIm, oddIm)));
    lastB = f32x4.mul(quarter, f32x4.add(f32x4.mul(evenIm, evenIm), f32x4.mul(oddRe, oddRe)));
    v128.store(real + 16 * k, lastA);
    v128.store(imaginary + 16 * k, lastB);
    sumA = f32x4.add(sumA, lastA);
    sumB = f32x4.add(sumB, lastB);
  }
  v128.store(sums, f32x4.sub(f32x4.add(sumA, sumA), lastA));
  v128.store(sums, f32x4.sub(f32x4.add(sumB, sumB), lastB), 16);
}

/**
 * Sums of power in bands.
 *
 * @param power a vector for each bin
 * @param edges first bin of each band and, at the end, the bin after the last
 * @param bands how many
 * @param into for each of the four lanes as many numbers as there are bands
 */
export function sumBands(power: usize, edges: usize, bands: i32, into: usize): void {
  for (let band: i32 = 0; band < bands; band++) {
    let sum = f32x4.splat(0);
    const end = power + 16 * load<i32>(edges + 4 * band, 4);
    for (let at = power + 16 * load<i32>(edges + 4 * band); at < end; at += 16) sum = f32x4.add(sum, v128.load(at));
    const to = into + 4 * band;
    const lane = 4 * bands;
    v128.store32_lane(to, sum, 0);
    v128.store32_lane(to + lane, sum, 1);
    v128.store32_lane(to + 2 * lane, sum, 2);
    v128.store32_lane(to + 3 * lane, sum, 3);
  }
}

/**
 * Four even spectra in one complex one, in each lane: the first and second as they are, the third and fourth as the differences
 * of neighbouring bins, which are odd. Their transforms are even and odd too, and so can be told apart.
 *
 * @param a power, a vector for each bin from 0 to half the size; so are `b`, `c` and `d`
 * @param size of the transform
 * @param packed where the complex numbers go; what belongs to bin 0 is not touched
 */
export function packPowers(a: usize, b: usize, c: usize, d: usize, size: i32, packed: usize): void {
  const half = size / 2;
  const middle = packed + COMPLEX * half;
  v128.store(middle, v128.load(a + 16 * half));
  v128.store(middle, v128.load(b + 16 * half), IMAGINARY);
  for (let k: i32 = 1; k < half; k++) {
    const at = 16 * k;
    const oddC = f32x4.sub(v128.load(c + at - 16), v128.load(c + at + 16));
    const oddD = f32x4.sub(v128.load(d + at - 16), v128.load(d + at + 16));
    const evenA = v128.load(a + at);
    const evenB = v128.load(b + at);
    const up = packed + COMPLEX * k;
    const down = packed + COMPLEX * (size - k);
    v128.store(up, f32x4.add(evenA, oddC));
    v128.store(up, f32x4.add(evenB, oddD), IMAGINARY);
    v128.store(down, f32x4.sub(evenA, oddC));
    v128.store(down, f32x4.sub(evenB, oddD), IMAGINARY);
  }
}

/** One over a sum; zero where there is digital silence. */
function inverse(sum: v128, least: v128): v128 {
  return v128.and(f32x4.div(f32x4.splat(1), sum), f32x4.gt(sum, least));
}

function storeFour(a: v128, b: v128, c: v128, d: v128, to: usize, row: usize): void {
  v128.store(to, transposed0(a, b, c, d));
  v128.store(to + row, transposed1(a, b, c, d));
  v128.store(to + 2 * row, transposed2(a, b, c, d));
  v128.store(to + 3 * row, transposed3(a, b, c, d));
}

/**
 * Autocorrelations of sixteen frames from the transform of their packed spectra, each divided by its value at lag 0. With
 * s = 2 sin(2π lag / size) the transform at `lag` holds a + s d in its real and b − s c in its imaginary part; at −lag, s changes
 * its sign.
 *
 * @param output the transform
 * @param size of it
 * @param oddScale for each lag 1 / (4 sin(2π lag / size)), and 0 at lag 0; a multiple of four numbers
 * @param lags how many there are, from 0 on: a multiple of four
 * @param sums four vectors: the autocorrelations at lag 0
 * @param least a frame whose sum is not above this is digital silence
 * @param into for each frame a row of numbers, of which these are some
 * @param row bytes from one frame's row to the next
 */
export function unpackLags(
  output: usize,
  size: i32,
  oddScale: usize,
  lags: i32,
  sums: usize,
  least: f32,
  into: usize,
  row: i32,
): void {
  const half = f32x4.splat(0.5);
  const leasts = f32x4.splat(least);
  for (let which: i32 = 0; which < 4; which++) {
    const odd = which >= 2;
    const inIm = which === 1 || which === 2;
    const scale = inverse(v128.load(sums + 16 * which), leasts);
    const sign = f32x4.splat(odd && inIm ? -1 : 1);
    for (let lag: i32 = 0; lag < lags; lag += 4) {
      const to = into + 4 * which * row + 4 * lag;
      const up = output + COMPLEX * lag + (inIm ? IMAGINARY : 0);
      const down = output + COMPLEX * (size - lag) + (inIm ? IMAGINARY : 0);
      // nothing stands beyond the last bin: what is found for lag 0 is not used
      const a = v128.load(up);
      const b = v128.load(up, 32);
      const c = v128.load(up, 64);
      const d = v128.load(up, 96);
      const e = v128.load(lag === 0 ? up : down);
      const f = v128.load(down - 32);
      const g = v128.load(down - 64);
      const h = v128.load(down - 96);
      if (odd) {
        const signed = f32x4.mul(sign, scale);
        storeFour(
          f32x4.mul(f32x4.sub(a, e), f32x4.mul(signed, v128.load32_splat(oddScale + 4 * lag))),
          f32x4.mul(f32x4.sub(b, f), f32x4.mul(signed, v128.load32_splat(oddScale + 4 * lag, 4))),
          f32x4.mul(f32x4.sub(c, g), f32x4.mul(signed, v128.load32_splat(oddScale + 4 * lag, 8))),
          f32x4.mul(f32x4.sub(d, h), f32x4.mul(signed, v128.load32_splat(oddScale + 4 * lag, 12))),
          to,
          row,
        );
      } else {
        const halved = f32x4.mul(half, scale);
        storeFour(
          f32x4.mul(f32x4.add(a, e), halved),
          f32x4.mul(f32x4.add(b, f), halved),
          f32x4.mul(f32x4.add(c, g), halved),
          f32x4.mul(f32x4.add(d, h), halved),
          to,
          row,
        );
      }
    }
  }
}
