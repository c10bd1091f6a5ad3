/** Plain measurements on samples for the tests, by the textbook and apart from the code under test. */

const TAU = 2 * Math.PI;

/** RMS between two times, dBFS. */
export function rmsDb(samples: Float32Array, rate: number, fromSeconds: number, toSeconds: number): number {
  const piece = samples.subarray(Math.round(fromSeconds * rate), Math.round(toSeconds * rate));
  return 10 * Math.log10(piece.reduce((sum, x) => sum + x * x, 0) / piece.length);
}

/** Discrete Fourier transform at one frequency over a Hann window: amplitude and phase of the component there. */
export function component(samples: Float32Array, rate: number, fromSeconds: number, seconds: number, hz: number) {
  const from = Math.round(fromSeconds * rate);
  const length = Math.round(seconds * rate);
  let [real, imaginary, weight] = [0, 0, 0];
  for (let i = 0; i < length; i++) {
    const hann = 0.5 - 0.5 * Math.cos((TAU * i) / length);
    const angle = (TAU * hz * (from + i)) / rate;
    real += hann * samples[from + i]! * Math.cos(angle);
    imaginary -= hann * samples[from + i]! * Math.sin(angle);
    weight += hann;
  }
  return { amplitude: (2 * Math.hypot(real, imaginary)) / weight, phase: Math.atan2(imaginary, real) };
}

/** Deviation in cents of the partial near `hz`, from how far its phase advances between two windows 15 ms apart. */
export function centsFrom(samples: Float32Array, rate: number, atSeconds: number, hz: number): number {
  const hop = 0.015;
  const first = component(samples, rate, atSeconds, 0.1, hz).phase;
  const second = component(samples, rate, atSeconds + hop, 0.1, hz).phase;
  const turn = second - first - TAU * Math.round((second - first) / TAU);
  return 1200 * Math.log2(1 + turn / (TAU * hop) / hz);
}

/** Seconds at which the level of 2 ms frames first reaches `db` after a time. */
export function firstAbove(samples: Float32Array, rate: number, fromSeconds: number, db: number): number {
  for (let t = fromSeconds; t < samples.length / rate; t += 0.001)
    if (rmsDb(samples, rate, t, t + 0.002) > db) return t;
  return Number.NaN;
}

/** Lowest level of 8 ms frames between two times, dBFS. */
export function lowestDb(samples: Float32Array, rate: number, fromSeconds: number, toSeconds: number): number {
  let lowest = Number.POSITIVE_INFINITY;
  for (let t = fromSeconds; t < toSeconds; t += 0.002) lowest = Math.min(lowest, rmsDb(samples, rate, t, t + 0.008));
  return lowest;
}
