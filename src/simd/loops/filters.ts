/**
 * Every other sample of a sound, by a half-band filter with seven weights on each side of its middle.
 *
 * @param samples the first one that the first filter reads, 13 before its middle
 * @param weights seven numbers: of the samples 1, 3, 5 … away
 * @param odds room for as many numbers as `count` and 16 more
 * @param into where the new samples go
 * @param count how many, a multiple of four
 */
export function halve(samples: usize, weights: usize, odds: usize, into: usize, count: i32): void {
  for (let k: i32 = 0; k < count + 16; k += 4) {
    const at = samples + 8 * k;
    v128.store(odds + 4 * k, v128.shuffle<f32>(v128.load(at), v128.load(at, 16), 0, 2, 4, 6));
  }
  const half = f32x4.splat(0.5);
  for (let k: i32 = 0; k < count; k += 4) {
    const middle = samples + 8 * k + 52;
    const centre = v128.shuffle<f32>(v128.load(middle), v128.load(middle, 16), 0, 2, 4, 6);
    const at = odds + 4 * k;
    let sum = f32x4.mul(half, centre);
    for (let j: i32 = 0; j < 7; j++) {
      const both = f32x4.add(v128.load(at + 4 * (6 - j)), v128.load(at + 4 * (7 + j)));
      sum = f32x4.add(sum, f32x4.mul(v128.load32_splat(weights + 4 * j), both));
    }
    v128.store(into + 4 * k, sum);
  }
}

/**
 * New samples from those around their places. A place goes on by `step` parts, of which `phases` are one old sample.
 *
 * @param samples the first one that the first filter reads
 * @param bank for each phase a filter of `taps` numbers
 * @param taps a multiple of four
 * @param phases how many filters
 * @param step by how much the place goes on
 * @param phase that of the first new sample
 * @param into where the new samples go
 * @param count how many
 */
export function filterAt(
  samples: usize,
  bank: usize,
  taps: i32,
  phases: i32,
  step: i32,
  phase: i32,
  into: usize,
  count: i32,
): void {
  const whole = step / phases;
  const part = step % phases;
  let from = samples;
  for (let n: i32 = 0; n < count; n++) {
    const filter = bank + 4 * taps * phase;
    let sum = f32x4.splat(0);
    for (let tap: i32 = 0; tap < 4 * taps; tap += 16) {
      sum = f32x4.add(sum, f32x4.mul(v128.load(filter + tap), v128.load(from + tap)));
    }
    const pairs = f32x4.add(sum, v128.shuffle<f32>(sum, sum, 2, 3, 0, 1));
    store<f32>(into + 4 * n, f32x4.extract_lane(pairs, 0) + f32x4.extract_lane(pairs, 1));
    phase += part;
    from += 4 * whole;
    if (phase >= phases) {
      phase -= phases;
      from += 4;
    }
  }
}
