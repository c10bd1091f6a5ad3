// Four complex transforms side by side: each lane of a vector belongs to a transform of its own, so that nothing ever moves from
// lane to lane. A complex number is two vectors: 32 bytes, real parts first.

const SIN_60: f32 = 0.8660254037844386;
const HALF: f32 = 0.5;
const COMPLEX: usize = 32;
const IMAGINARY: usize = 16;

/** Real part of a product of complex numbers. */
function productRe(re: v128, im: v128, byRe: v128, byIm: v128): v128 {
  return f32x4.sub(f32x4.mul(re, byRe), f32x4.mul(im, byIm));
}

/** Imaginary part of it. */
function productIm(re: v128, im: v128, byRe: v128, byIm: v128): v128 {
  return f32x4.add(f32x4.mul(re, byIm), f32x4.mul(im, byRe));
}

/**
 * The first pass where the size is three times a power of two.
 *
 * @param x from here
 * @param y to here
 * @param count a third of the size
 * @param twiddles for each group exp(−2πip / size) and its square, one number after the other
 */
export function firstByThree(x: usize, y: usize, count: i32, twiddles: usize): void {
  const sin60 = f32x4.splat(SIN_60);
  const half = f32x4.splat(HALF);
  const third = COMPLEX * count;
  for (let p: i32 = 0; p < count; p++) {
    const a = x + COMPLEX * p;
    const b = a + third;
    const c = b + third;
    const aRe = v128.load(a);
    const aIm = v128.load(a, IMAGINARY);
    const bRe = v128.load(b);
    const bIm = v128.load(b, IMAGINARY);
    const cRe = v128.load(c);
    const cIm = v128.load(c, IMAGINARY);
    const sumRe = f32x4.add(bRe, cRe);
    const sumIm = f32x4.add(bIm, cIm);
    const midRe = f32x4.sub(aRe, f32x4.mul(half, sumRe));
    const midIm = f32x4.sub(aIm, f32x4.mul(half, sumIm));
    const turnRe = f32x4.mul(sin60, f32x4.sub(bIm, cIm));
    const turnIm = f32x4.mul(sin60, f32x4.sub(cRe, bRe));
    const w = twiddles + 16 * p;
    const re1 = v128.load32_splat(w);
    const im1 = v128.load32_splat(w, 4);
    const re2 = v128.load32_splat(w, 8);
    const im2 = v128.load32_splat(w, 12);
    const to = y + 3 * COMPLEX * p;
    const upRe = f32x4.add(midRe, turnRe);
    const upIm = f32x4.add(midIm, turnIm);
    const downRe = f32x4.sub(midRe, turnRe);
    const downIm = f32x4.sub(midIm, turnIm);
    v128.store(to, f32x4.add(aRe, sumRe));
    v128.store(to, f32x4.add(aIm, sumIm), 16);
    v128.store(to, productRe(upRe, upIm, re1, im1), 32);
    v128.store(to, productIm(upRe, upIm, re1, im1), 48);
    v128.store(to, productRe(downRe, downIm, re2, im2), 64);
    v128.store(to, productIm(downRe, downIm, re2, im2), 80);
  }
}

/**
 * A pass that turns four numbers into each other.
 *
 * @param x from here
 * @param y to here
 * @param count groups
 * @param stride numbers a group
 * @param twiddles for each group exp(−2πip / length), its square and its third power
 */
export function byFour(x: usize, y: usize, count: i32, stride: i32, twiddles: usize): void {
  const row = COMPLEX * stride;
  const step = row * count;
  for (let p: i32 = 0; p < count; p++) {
    const w = twiddles + 24 * p;
    const re1 = v128.load32_splat(w);
    const im1 = v128.load32_splat(w, 4);
    const re2 = v128.load32_splat(w, 8);
    const im2 = v128.load32_splat(w, 12);
    const re3 = v128.load32_splat(w, 16);
    const im3 = v128.load32_splat(w, 20);
    let to = y + 4 * row * p;
    for (let a = x + row * p, end = a + row; a < end; a += COMPLEX, to += COMPLEX) {
      const b = a + step;
      const c = b + step;
      const d = c + step;
      const aRe = v128.load(a);
      const aIm = v128.load(a, IMAGINARY);
      const bRe = v128.load(b);
      const bIm = v128.load(b, IMAGINARY);
      const cRe = v128.load(c);
      const cIm = v128.load(c, IMAGINARY);
      const dRe = v128.load(d);
      const dIm = v128.load(d, IMAGINARY);
      const acRe = f32x4.add(aRe, cRe);
      const acIm = f32x4.add(aIm, cIm);
      const acOffRe = f32x4.sub(aRe, cRe);
      const acOffIm = f32x4.sub(aIm, cIm);
      const bdRe = f32x4.add(bRe, dRe);
      const bdIm = f32x4.add(bIm, dIm);
      const turnRe = f32x4.sub(bIm, dIm);
      const turnIm = f32x4.sub(dRe, bRe);
      const oneRe = f32x4.add(acOffRe, turnRe);
      const oneIm = f32x4.add(acOffIm, turnIm);
      const twoRe = f32x4.sub(acRe, bdRe);
      const twoIm = f32x4.sub(acIm, bdIm);
      const threeRe = f32x4.sub(acOffRe, turnRe);
      const threeIm = f32x4.sub(acOffIm, turnIm);
      const to1 = to + row;
      const to2 = to1 + row;
      const to3 = to2 + row;
      v128.store(to, f32x4.add(acRe, bdRe));
      v128.store(to, f32x4.add(acIm, bdIm), IMAGINARY);
      v128.store(to1, productRe(oneRe, oneIm, re1, im1));
      v128.store(to1, productIm(oneRe, oneIm, re1, im1), IMAGINARY);
      v128.store(to2, productRe(twoRe, twoIm, re2, im2));
      v128.store(to2, productIm(twoRe, twoIm, re2, im2), IMAGINARY);
      v128.store(to3, productRe(threeRe, threeIm, re3, im3));
      v128.store(to3, productIm(threeRe, threeIm, re3, im3), IMAGINARY);
    }
  }
}

/**
 * The last pass where two are left over.
 *
 * @param x from here
 * @param y to here
 * @param stride half the size
 */
export function lastByTwo(x: usize, y: usize, stride: i32): void {
  const row = COMPLEX * stride;
  for (let a = x, to = y, end = x + row; a < end; a += IMAGINARY, to += IMAGINARY) {
    const one = v128.load(a);
    const other = v128.load(a + row);
    v128.store(to, f32x4.add(one, other));
    v128.store(to + row, f32x4.sub(one, other));
  }
}
