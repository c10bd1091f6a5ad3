/** One over the largest size of a number of 16 bits. */
const SCALE: f32 = 1.0 / 32768.0;

/**
 * Numbers of 16 bits, one after the other, as samples of full scale ±1.
 *
 * @param from the first
 * @param count how many; up to seven more are read and written
 * @param into where the samples go
 */
export function fromInt16(from: usize, count: i32, into: usize): void {
  const scale = f32x4.splat(SCALE);
  for (let i: i32 = 0; i < count; i += 8) {
    const eight = v128.load(from + 2 * i);
    const to = into + 4 * i;
    v128.store(to, f32x4.mul(scale, f32x4.convert_i32x4_s(i32x4.extend_low_i16x8_s(eight))));
    v128.store(to, f32x4.mul(scale, f32x4.convert_i32x4_s(i32x4.extend_high_i16x8_s(eight))), 16);
  }
}

/**
 * Every other number of 16 bits, as samples of full scale ±1.
 *
 * @param from the first
 * @param count how many; up to three more are read and written
 * @param into where the samples go
 */
export function fromEveryOtherInt16(from: usize, count: i32, into: usize): void {
  const scale = f32x4.splat(SCALE);
  for (let i: i32 = 0; i < count; i += 4) {
    const first = i32x4.shr_s(i32x4.shl(v128.load(from + 4 * i), 16), 16);
    v128.store(into + 4 * i, f32x4.mul(scale, f32x4.convert_i32x4_s(first)));
  }
}
