/**
 * What stands out in spectra: the fourth root of the power where a bin is a peak, nothing elsewhere. The first and the last bin
 * count as silent.
 *
 * @param power a vector for each bin from 0 to `half`
 * @param half the last bin
 * @param into where the magnitudes go, a vector for each bin
 */
export function peakMagnitudes(power: usize, half: i32, into: usize): void {
  const none = f32x4.splat(0);
  v128.store(into, none);
  v128.store(into + 16 * half, none);
  let before = none;
  let here = v128.load(power + 16);
  for (let k: i32 = 1; k < half; k++) {
    const after = k + 1 < half ? v128.load(power + 16 * k, 16) : none;
    const peak = v128.and(f32x4.ge(here, before), f32x4.ge(here, after));
    v128.store(into + 16 * k, v128.and(peak, f32x4.sqrt(f32x4.sqrt(here))));
    before = here;
    here = after;
  }
}

/**
 * How well the harmonics of each pitch stand out, beside the pitch whose harmonics do best.
 *
 * @param magnitudes from peakMagnitudes
 * @param harmonics for each place of a harmonic its lowest bin, its highest bin (whole numbers) and its weight (a number)
 * @param places how many a pitch
 * @param pitches how many
 * @param least a pitch with less than this share of the best counts for nothing
 * @param scratch a vector for each pitch
 * @param into for each of the four lanes as many numbers as there are pitches, 0 to 1
 */
export function weighPitches(
  magnitudes: usize,
  harmonics: usize,
  places: i32,
  pitches: i32,
  least: f32,
  scratch: usize,
  into: usize,
): void {
  let most = f32x4.splat(1e-9);
  let place = harmonics;
  for (let p: i32 = 0; p < pitches; p++) {
    let sum = f32x4.splat(0);
    for (let h: i32 = 0; h < places; h++, place += 12) {
      const end = magnitudes + 16 * load<i32>(place, 4);
      let peak = f32x4.splat(0);
      for (let at = magnitudes + 16 * load<i32>(place); at <= end; at += 16) peak = f32x4.pmax(peak, v128.load(at));
      sum = f32x4.add(sum, f32x4.mul(v128.load32_splat(place, 8), peak));
    }
    v128.store(scratch + 16 * p, sum);
    most = f32x4.pmax(most, sum);
  }
  const leasts = f32x4.splat(least);
  const scale = f32x4.splat(1 / (1 - least));
  const none = f32x4.splat(0);
  const lane = 4 * pitches;
  for (let p: i32 = 0; p < pitches; p++) {
    const share = f32x4.div(v128.load(scratch + 16 * p), most);
    const evidence = f32x4.pmax(none, f32x4.mul(f32x4.sub(share, leasts), scale));
    const to = into + 4 * p;
    v128.store32_lane(to, evidence, 0);
    v128.store32_lane(to + lane, evidence, 1);
    v128.store32_lane(to + 2 * lane, evidence, 2);
    v128.store32_lane(to + 3 * lane, evidence, 3);
  }
}
