import { median, midiToHz } from '../../base/index.js';
import type { Features } from '../../features/index.js';
import type { CrackSound } from '../types.js';

/** Windows last at least so long, a whole number of pairs of periods: neighbouring harmonics, and those halfway, lie on its zeros. */
const WINDOW_SECONDS = 0.025;
const LEAST_PERIODS = 4;
/** Of lower tones so long a window blurs the beginning. */
const LOWEST_HZ = 80;
/** Harmonics that are looked at, in halves: up to the sixth. */
const MOST_HALVES = 12;
/** Part of the rate up to which there is sound. */
const HIGHEST_SHARE = 0.45;
/** The note itself is looked at in so many windows, from so long after it is first heard to so long before it ends. */
const STEADY_WINDOWS = 5;
const STEADY_AFTER_SECONDS = 0.19;
const ENDING_SECONDS = 0.03;
/** A tone an octave higher has so little in odd harmonics, and so much less than the note has then. */
const ODD_DB = -10;
const ODD_FALL_DB = 12;
/** A tone an octave lower has so much between the harmonics, and so much more than the note has then. */
const BETWEEN_DB = -6;
const BETWEEN_RISE_DB = 12;
/** It is as loud as other cracks, and lasts for so many frames. */
const LOUD_DB = 14;
const LEAST_FRAMES = 4;
/** A crack that lasts is heard within so long. */
const WITHIN_SECONDS = 0.045;

/**
 * Whether a note begins an octave away. Periods cannot tell: an octave below is in every tone, and of a dull beginning one above
 * is. Harmonics can: a tone an octave above has no odd ones, one below has some between those of the note.
 *
 * @param features what was heard
 * @param from when the note is first heard, seconds
 * @param until the end of the note, seconds
 * @param midi the pitch of the note, tuning included
 * @returns what sounds before it, or null where nothing an octave away does
 *
 * Source: harmonics of a periodic tone, by definition; discrete Fourier transform with Hann's window; limits are working values.
 */
export function octaveCrack(features: Features, from: number, until: number, midi: number): CrackSound | null {
  const hz = midiToHz(midi);
  const heldFrom = from + STEADY_AFTER_SECONDS;
  const heldSeconds = until - ENDING_SECONDS - heldFrom;
  if (hz < LOWEST_HZ || heldSeconds < 0) return null;
  const read = balanceReader(features, hz);
  const hop = features.pitchHopSeconds;
  let first = Math.round(from / hop);
  while (first * hop <= from + WITHIN_SECONDS && wayOf(read(first * hop)) === 0) first += 2;
  if (first * hop > from + WITHIN_SECONDS) return null;
  const held = Array.from({ length: STEADY_WINDOWS }, (_, i) =>
    read(heldFrom + (i * heldSeconds) / (STEADY_WINDOWS - 1)),
  );
  const usual = (key: keyof Balance): number => median(held.map((one) => one[key]));
  const [usualOddDb, usualBetweenDb, usualDb] = [usual('oddDb'), usual('betweenDb'), usual('db')];
  const wayAt = (at: number): number => {
    const heard = read(at);
    const way = wayOf(heard);
    if (way === 0 || heard.db < usualDb - LOUD_DB) return 0;
    const plain =
      way < 0 ? heard.betweenDb >= usualBetweenDb + BETWEEN_RISE_DB : heard.oddDb <= usualOddDb - ODD_FALL_DB;
    return plain ? way : 0;
  };
  while (first * hop <= from + WITHIN_SECONDS && wayAt(first * hop) === 0) first += 2;
  const semitones = wayAt(first * hop);
  let frames = 0;
  for (let f = first; semitones !== 0 && f * hop < until && wayAt(f * hop) === semitones; f++) frames++;
  return frames < LEAST_FRAMES ? null : { semitones, seconds: frames * hop };
}

/** An octave down, or up, or neither, by what is there at one moment alone. */
function wayOf({ oddDb, betweenDb }: Balance): number {
  return betweenDb >= BETWEEN_DB ? -12 : oddDb <= ODD_DB ? 12 : 0;
}

/** What a tone is made of at one moment: odd over even harmonics, what lies between all of them over them, and all together. */
interface Balance {
  readonly db: number;
  readonly oddDb: number;
  readonly betweenDb: number;
}

function balanceReader({ signal, signalRateHz: rate }: Features, hz: number): (seconds: number) => Balance {
  const periods = Math.max(LEAST_PERIODS, 2 * Math.ceil((WINDOW_SECONDS * hz) / 2));
  const length = Math.round((periods * rate) / hz);
  const halves = Math.min(MOST_HALVES, Math.floor((2 * HIGHEST_SHARE * rate) / hz));
  const taper = Float64Array.from({ length }, (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / length));
  return (seconds) => {
    const first = Math.round(seconds * rate - length / 2);
    const sums = { odd: 1e-12, even: 1e-12, between: 1e-12 };
    for (let half = 1; half <= halves; half++) {
      const power = powerAt(signal, first, taper, (Math.PI * half * hz) / rate);
      sums[half % 2 === 1 ? 'between' : half % 4 === 2 ? 'odd' : 'even'] += power;
    }
    return {
      db: 10 * Math.log10(sums.odd + sums.even + sums.between),
      oddDb: 10 * Math.log10(sums.odd / sums.even),
      betweenDb: 10 * Math.log10(sums.between / (sums.odd + sums.even)),
    };
  };
}

/** Power of a tapered stretch at one frequency. Source: Goertzel 1958. */
function powerAt(signal: Float32Array, first: number, taper: Float64Array, radians: number): number {
  const twice = 2 * Math.cos(radians);
  let [one, two] = [0, 0];
  for (let i = 0; i < taper.length; i++) {
    const next = taper[i]! * (signal[first + i] ?? 0) + twice * one - two;
    two = one;
    one = next;
  }
  return one * one + two * two - twice * one * two;
}
