/** Zero crossings of the filter to each side of its middle. */
const CROSSINGS = 16;
/** Where the filter begins to fall, as a share of half the lower rate. */
const EDGE = 0.9;

/**
 * Slows the rate of a sound, leaving out what lies above half the new rate.
 *
 * @param samples mono
 * @param rateHz whole number of samples a second
 * @param newRateHz whole number, at most `rateHz`
 * @returns the sound at the new rate; sample 0 stays where it was
 *
 * Source: Smith, Digital Audio Resampling (windowed sinc); Nuttall 1981 for the window (Blackman).
 */
export function resample(samples: Float32Array, rateHz: number, newRateHz: number): Float32Array {
  if (newRateHz >= rateHz) return samples.slice();
  const divisor = commonDivisor(rateHz, newRateHz);
  const [step, phases] = [rateHz / divisor, newRateHz / divisor];
  const filters = new Map<number, Float64Array>();
  const reach = Math.ceil((CROSSINGS * rateHz) / newRateHz);
  return Float32Array.from({ length: Math.ceil((samples.length * newRateHz) / rateHz) }, (_, n) => {
    const phase = (n * step) % phases;
    const middle = (n * step - phase) / phases;
    let filter = filters.get(phase);
    if (filter === undefined) {
      filter = filterAt(phase / phases, reach, (EDGE * newRateHz) / rateHz);
      filters.set(phase, filter);
    }
    let sum = 0;
    for (let tap = 0; tap < filter.length; tap++) {
      sum += (filter[tap] as number) * (samples[middle + tap - reach + 1] ?? 0);
    }
    return sum;
  });
}

/** Weights of the samples around a place that lies a fraction of a sample beyond the middle one; they add up to 1. */
function filterAt(fraction: number, reach: number, edge: number): Float64Array {
  const filter = Float64Array.from({ length: 2 * reach }, (_, tap) => {
    const away = tap - reach + 1 - fraction;
    const x = Math.PI * edge * away;
    const turn = (Math.PI * away) / reach;
    const window = Math.abs(away) > reach ? 0 : 0.42 + 0.5 * Math.cos(turn) + 0.08 * Math.cos(2 * turn);
    return (x === 0 ? 1 : Math.sin(x) / x) * window;
  });
  const sum = filter.reduce((a, b) => a + b, 0);
  return filter.map((weight) => weight / sum);
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}
