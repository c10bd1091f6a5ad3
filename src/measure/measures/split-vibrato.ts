import { robustSpread } from '../../base/index.js';

/** Vibrato is a regular wave of so many turns a second. Source: Sundberg, The Acoustics of the Singing Voice, and Prame 1994 (5 to 7 Hz, in singers), both from memory; widened. */
const LEAST_HZ = 4;
const MOST_HZ = 8;
const STEP_HZ = 0.25;

/** A course parted into a regular wave and what is left. */
export interface SplitCourse {
  /** how far the course strays from its own slow bend, as a standard deviation that single jerks do not change */
  readonly spread: number;
  /** the same when the best wave has been taken out */
  readonly restSpread: number;
  /** share of the movement that the best wave takes out, 0 to 1 */
  readonly regularShare: number;
  /** of the best wave */
  readonly rateHz: number;
  /** amplitude of the best wave, in the unit of the values */
  readonly depth: number;
}

/**
 * Takes out of a course its slow bend (a parabola) and then the wave of 4 to 8 Hz that leaves the least.
 *
 * @param seconds times of the values, in order, at least six
 * @param values pitch or level at those times
 * @returns spreads in the unit of the values, and the wave
 *
 * Source: least squares; Lomb 1976 for waves through values that are not evenly spaced; robust spread: see base.
 */
export function splitVibrato(seconds: readonly number[], values: readonly number[]): SplitCourse {
  const from = seconds[0]!;
  const span = seconds.at(-1)! - from;
  const bent = withoutBend(
    seconds.map((t) => (2 * (t - from)) / span - 1),
    values,
  );
  let best: Wave = { taken: 0, cosine: 0, sine: 0, hz: LEAST_HZ };
  for (let hz = LEAST_HZ; hz <= MOST_HZ; hz += STEP_HZ) {
    const wave = waveIn(seconds, bent, hz);
    if (wave.taken > best.taken) best = wave;
  }
  const rest = bent.map((v, i) => v - waveAt(best, seconds[i]! - from));
  return {
    spread: robustSpread(bent),
    restSpread: robustSpread(rest),
    regularShare: best.taken / Math.max(1e-12, dot(bent, bent)),
    rateHz: best.hz,
    depth: Math.hypot(best.cosine, best.sine),
  };
}

interface Wave {
  readonly hz: number;
  readonly cosine: number;
  readonly sine: number;
  /** sum of squares that it takes out */
  readonly taken: number;
}

function waveAt({ hz, cosine, sine }: Wave, seconds: number): number {
  const angle = 2 * Math.PI * hz * seconds;
  return cosine * Math.cos(angle) + sine * Math.sin(angle);
}

/** The values less the parabola through them, over abscissae from −1 to 1. */
function withoutBend(x: readonly number[], values: readonly number[]): number[] {
  let rest = [...values];
  const taken: number[][] = [];
  for (const power of [0, 1, 2]) {
    let basis = x.map((v) => v ** power);
    for (const other of taken) basis = less(basis, other);
    taken.push(basis);
    rest = less(rest, basis);
  }
  return rest;
}

/** What of the values is not along the other ones. */
function less(values: readonly number[], along: readonly number[]): number[] {
  const share = dot(values, along) / Math.max(1e-12, dot(along, along));
  return values.map((v, i) => v - share * along[i]!);
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, v, i) => sum + v * b[i]!, 0);
}

/** The wave of one rate that leaves the least. */
function waveIn(seconds: readonly number[], values: readonly number[], hz: number): Wave {
  let [cc, ss, cs, vc, vs] = [0, 0, 0, 0, 0];
  for (let i = 0; i < values.length; i++) {
    const angle = 2 * Math.PI * hz * (seconds[i]! - seconds[0]!);
    const [c, s, v] = [Math.cos(angle), Math.sin(angle), values[i]!];
    cc += c * c;
    ss += s * s;
    cs += c * s;
    vc += v * c;
    vs += v * s;
  }
  const determinant = cc * ss - cs * cs;
  if (determinant < 1e-9) return { hz, cosine: 0, sine: 0, taken: 0 };
  const cosine = (vc * ss - vs * cs) / determinant;
  const sine = (vs * cc - vc * cs) / determinant;
  return { hz, cosine, sine, taken: cosine * vc + sine * vs };
}
