/** Taps of the low-pass filter on each side of its centre, for each step of decimation. */
const SIDE_TAPS_A_STEP = 6;

/**
 * Low-pass filters and keeps one sample of `factor`. No delay: output sample k stands at input sample `k * factor`.
 *
 * @param samples input, any rate
 * @param factor whole number, 1 returns the input itself
 * @returns the slower signal
 *
 * Source: windowed-sinc design (Oppenheim & Schafer, Discrete-Time Signal Processing), Hamming window, cut-off at 0.45
 * of the new rate.
 */
export function decimate(samples: Float32Array, factor: number): Float32Array {
  if (factor === 1) return samples;
  const side = SIDE_TAPS_A_STEP * factor;
  const taps = lowPassTaps(side, 0.45 / factor);
  const out = new Float32Array(Math.ceil(samples.length / factor));
  const inner = samples.length - side - 1;
  for (let k = 0; k < out.length; k++) {
    const centre = k * factor;
    if (centre < side || centre > inner) {
      out[k] = edgeSample(samples, taps, side, centre);
      continue;
    }
    let sum = taps[0]! * samples[centre]!;
    for (let j = 1; j <= side; j++) sum += taps[j]! * (samples[centre - j]! + samples[centre + j]!);
    out[k] = sum;
  }
  return out;
}

function lowPassTaps(side: number, cutOff: number): Float64Array {
  const taps = new Float64Array(side + 1);
  let total = 0;
  for (let j = 0; j <= side; j++) {
    const sinc = j === 0 ? 2 * cutOff : Math.sin(2 * Math.PI * cutOff * j) / (Math.PI * j);
    taps[j] = sinc * (0.54 + 0.46 * Math.cos((Math.PI * j) / side));
    total += (j === 0 ? 1 : 2) * taps[j]!;
  }
  return taps.map((tap) => tap / total);
}

function edgeSample(samples: Float32Array, taps: Float64Array, side: number, centre: number): number {
  let sum = 0;
  for (let j = -side; j <= side; j++) sum += taps[Math.abs(j)]! * (samples[centre + j] ?? 0);
  return sum;
}
