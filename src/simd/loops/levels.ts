/**
 * Mean square and largest size of a sample in frames that follow each other.
 *
 * @param samples the first one of the first frame
 * @param frames how many
 * @param hop samples a frame
 * @param power where the mean squares go, a number each
 * @param peak where the largest sizes go, a number each
 */
export function frameLevels(samples: usize, frames: i32, hop: i32, power: usize, peak: usize): void {
  const fours = hop & ~3;
  let at = samples;
  for (let f: i32 = 0; f < frames; f++) {
    let squares = f32x4.splat(0);
    let most = f32x4.splat(0);
    for (let i: i32 = 0; i < fours; i += 4, at += 16) {
      const x = v128.load(at);
      squares = f32x4.add(squares, f32x4.mul(x, x));
      most = f32x4.pmax(most, f32x4.abs(x));
    }
    const pairs = f32x4.add(squares, v128.shuffle<f32>(squares, squares, 2, 3, 0, 1));
    const larger = f32x4.pmax(most, v128.shuffle<f32>(most, most, 2, 3, 0, 1));
    let sum = f32x4.extract_lane(pairs, 0) + f32x4.extract_lane(pairs, 1);
    let largest = max(f32x4.extract_lane(larger, 0), f32x4.extract_lane(larger, 1));
    for (let i: i32 = fours; i < hop; i++, at += 4) {
      const x = load<f32>(at);
      sum += x * x;
      largest = max(largest, abs(x));
    }
    store<f32>(power + 4 * f, sum / <f32>hop);
    store<f32>(peak + 4 * f, largest);
  }
}
