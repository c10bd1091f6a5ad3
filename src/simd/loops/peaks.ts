/**
 * Peaks of one autocorrelation: higher than what is before, and not lower than what follows.
 *
 * @param lags values, the first that of lag 0
 * @param gain weights of the values, each a number
 * @param first the lowest lag that may be a peak
 * @param last the highest
 * @param least a peak is at least so high
 * @param found where the lags of the peaks go
 * @returns how many there are
 */
export function findPeaks(lags: usize, gain: usize, first: i32, last: i32, least: f32, found: usize): i32 {
  const leasts = f32x4.splat(least);
  let count: i32 = 0;
  for (let lag: i32 = first; lag <= last; lag += 4) {
    const at = lags + 4 * lag;
    const weight = gain + 4 * lag;
    const here = f32x4.mul(v128.load(at), v128.load(weight));
    const high = f32x4.ge(here, leasts);
    if (!v128.any_true(high)) continue;
    const before = f32x4.mul(v128.load(at - 4), v128.load(weight - 4));
    const after = f32x4.mul(v128.load(at + 4), v128.load(weight + 4));
    const peaks = v128.and(high, v128.and(f32x4.ge(here, before), f32x4.gt(here, after)));
    let mask = i32x4.bitmask(peaks);
    while (mask !== 0) {
      const place = lag + ctz(mask);
      mask &= mask - 1;
      if (place > last) break;
      store<i32>(found + 4 * count, place);
      count++;
    }
  }
  return count;
}
