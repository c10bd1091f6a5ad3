import type { Features } from '../../features/index.js';
import { fourfoldTransform, keptFor, openLoops, transformSize } from '../../simd/index.js';

/** Windows are so long, twice the longest delay and more. */
const WINDOW_SECONDS = 2;
/** What these few do not show is not looked for; what they show must be there in more of them. */
const FIRST_WINDOWS = 8;
const MOST_WINDOWS = 120;
/** A delay below the first is the room's; one above the second no longer falls into the notes that follow. */
const SHORTEST_SECONDS = 0.08;
const LONGEST_SECONDS = 0.7;
/**
 * An echo of this share of the direct sound's amplitude. Working value: 0.35 came out at 0.2 to 0.3 on rendered takes, takes
 * without an echo at 0.06 and less, real ones at 0.05.
 */
const LEAST_SHARE = 0.12;
/** What lies so far below the strongest bin, in power, is rounding. */
const FLOOR = 1e-12;

/** Numbers in a vector, and in a complex one. */
const [LANES, COMPLEX] = [4, 8];

/**
 * How late a wall sends everything back that is played, when it does so plainly. A sum of a sound and its echo has a spectrum
 * with ripples, evenly spaced; the spectrum of its logarithm has a peak at the delay, as high as the echo's share.
 *
 * @param features what was heard
 * @returns seconds, or undefined where there is no plain echo
 *
 * Source: the cepstrum (Bogert, Healy & Tukey 1963, who made it for echoes; from memory).
 */
export function measureEchoDelay({ signal, signalRateHz: rate }: Features): number | undefined {
  const size = transformSize(WINDOW_SECONDS * rate);
  if (signal.length < size) return undefined;
  const cepstrumOf = cepstrometer(size);
  return echoIn(cepstrumOf(signal, FIRST_WINDOWS), rate) && echoIn(cepstrumOf(signal, MOST_WINDOWS), rate);
}

/** The delay of the highest peak, seconds; undefined where that is none. */
function echoIn(cepstrum: (delay: number) => number, rate: number): number | undefined {
  let at = Math.ceil(SHORTEST_SECONDS * rate);
  for (let k = at; k <= LONGEST_SECONDS * rate; k++) if (cepstrum(k) > cepstrum(at)) at = k;
  return cepstrum(at) >= LEAST_SHARE ? at / rate : undefined;
}

const cepstrometer = keptFor(openCepstrum);

/** The mean cepstrum of so many windows of a signal at most, by delay in samples; valid until the next call. */
function openCepstrum(size: number): (signal: Float32Array, most: number) => (delay: number) => number {
  const fourier = fourfoldTransform(size);
  const { loops, memory } = openLoops({
    ...{ twiddles: fourier.twiddles.length, input: COMPLEX * size, one: COMPLEX * size, other: COMPLEX * size },
  });
  const { twiddles, input, one, other } = memory;
  twiddles.set(fourier.twiddles);
  const taper = Float32Array.from({ length: size }, (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / size));
  const transform = (): Float32Array => fourier.run(loops, twiddles, [input, one, other]);
  return (signal, most) => {
    const windows = Math.min(most, Math.floor((2 * signal.length) / size) - 1);
    const hop = windows < 2 ? 0 : (signal.length - size) / (windows - 1);
    const logs = new Float64Array(size);
    let counted = 0;
    for (let first = 0; first < windows; first += LANES) {
      input.fill(0);
      for (let lane = 0; lane < LANES && first + lane < windows; lane++) {
        const from = Math.floor((first + lane) * hop);
        for (let i = 0; i < size; i++) input[COMPLEX * i + lane] = taper[i]! * signal[from + i]!;
      }
      const spectra = transform();
      for (let lane = 0; lane < LANES; lane++) if (addLogs(spectra, lane, logs)) counted++;
    }
    input.fill(0);
    for (let i = 0; i < size; i++) input[COMPLEX * i] = logs[i]!;
    const cepstrum = transform();
    const scale = counted === 0 ? 0 : 1 / (size * counted);
    return (delay) => scale * cepstrum[COMPLEX * delay]!;
  };
}

/** Adds the logarithms of the powers of one lane; false where there is only silence. */
function addLogs(spectra: Float32Array, lane: number, logs: Float64Array): boolean {
  const size = logs.length;
  const powerOf = (bin: number): number => {
    const at = COMPLEX * bin + lane;
    return spectra[at]! ** 2 + spectra[at + LANES]! ** 2;
  };
  let most = 0;
  for (let bin = 0; bin <= size / 2; bin++) most = Math.max(most, powerOf(bin));
  if (most === 0) return false;
  for (let bin = 0; bin <= size / 2; bin++) {
    const log = Math.log(powerOf(bin) + FLOOR * most);
    logs[bin]! += log;
    if (bin > 0 && bin < size / 2) logs[size - bin]! += log;
  }
  return true;
}
