import { studentQuantile } from '../../base/index.js';
import type { LengthDifference, UnevenCause } from '../types.js';
import type { GroupedNote } from './grouped-notes.js';

/** Two-sided points of the normal distribution. Source: any table of it. */
const NORMAL_95 = 1.96;
/**
 * Five causes are looked at: each interval is one of 99 %, so that in 95 of 100 takes that lean nowhere none excludes zero.
 * Source: Bonferroni's inequality: 0.05 over five.
 */
const NORMAL_JOINT = 2.5758;
/**
 * A group begins at the onset that ends the one before: with errors of onsets as they are, the first (or last) note of a triplet over
 * the others has a variance of 1.5² + 1² + 0.5² and goes with that of the next triplet by 0.5 · 1, so that the error of the mean
 * of many is the root of 1 + 2 · 0.5 / 3.5 times as large. No other cause, and no larger group, has more.
 */
const SHARED_ONSET = Math.sqrt(1 + 1 / 3.5);
/** Two causes that leave less than this share of each other are not told apart. Source: working value: variance inflated tenfold. */
const LEAST_APART = 0.1;

/** The notes' numbers less those of their groups. */
export interface Within {
  readonly groups: Int32Array;
  readonly longer: Float64Array;
  readonly causes: Readonly<Record<UnevenCause, Float64Array>>;
}

/**
 * @param notes notes of groups
 * @param names every cause that is looked at
 * @returns how much longer each note is than its group, and the same of having a cause (1) or not (0)
 *
 * Source: within estimator of panel data, by definition.
 */
export function within(notes: readonly GroupedNote[], names: readonly UnevenCause[]): Within {
  const groups = Int32Array.from(notes, (n) => n.group);
  const centred = (of: (note: GroupedNote) => number): Float64Array => {
    const sums = new Map<number, [sum: number, count: number]>();
    for (const note of notes) {
      const [sum, count] = sums.get(note.group) ?? [0, 0];
      sums.set(note.group, [sum + of(note), count + 1]);
    }
    return Float64Array.from(notes, (note) => of(note) - sums.get(note.group)![0] / sums.get(note.group)![1]);
  };
  const causes = names.map((name) => [name, centred((n) => (n.causes.has(name) ? 1 : 0))]);
  return { groups, longer: centred((n) => n.longer), causes: Object.fromEntries(causes) };
}

/**
 * @param data notes less their groups
 * @param cause whose notes are asked about
 * @param other cause that is allowed for, if any
 * @returns by how much they are longer; null where the two causes cannot be told apart, or in one group alone
 *
 * Source: least squares; its error by leaving out one group after the other, as errors go together within a group (jackknife,
 * Cameron & Miller 2015, from memory); Student's t with G − 1 degrees of freedom, G the groups in which the cause varies.
 */
export function lengthDifference(data: Within, cause: UnevenCause, other?: UnevenCause): LengthDifference | null {
  const own = data.causes[cause];
  const beside = other === undefined ? new Float64Array(own.length) : data.causes[other];
  const squares = dot(beside, beside);
  const along = squares === 0 ? 0 : dot(own, beside) / squares;
  const rest = own.map((v, i) => v - along * beside[i]!);
  const apart = dot(rest, rest);
  if (apart < LEAST_APART * dot(own, own)) return null;
  const slope = dot(rest, data.longer) / apart;
  const besideSlope = squares === 0 ? 0 : (dot(beside, data.longer) - slope * dot(own, beside)) / squares;
  const perGroup = new Map<number, [score: number, weight: number]>();
  rest.forEach((v, i) => {
    const residual = data.longer[i]! - slope * own[i]! - besideSlope * beside[i]!;
    const [score, weight] = perGroup.get(data.groups[i]!) ?? [0, 0];
    perGroup.set(data.groups[i]!, [score + v * residual, weight + v * v]);
  });
  // what one group alone tells apart cannot be left out to see how sure it is
  if ([...perGroup.values()].some(([, weight]) => apart - weight < LEAST_APART * apart)) return null;
  const varying = new Set(data.groups.filter((_, i) => Math.abs(own[i]!) > 1e-9)).size;
  const sum = [...perGroup.values()].reduce((total, [score, weight]) => total + (score / (apart - weight)) ** 2, 0);
  const error = SHARED_ONSET * Math.sqrt((sum * (varying - 1)) / varying);
  const around = (normal: number): [number, number] => {
    const half = studentQuantile(normal, varying - 1) * error;
    return [slope - half, slope + half];
  };
  return { differenceShare: slope, intervalShare: around(NORMAL_95), jointIntervalShare: around(NORMAL_JOINT) };
}

/**
 * @param data notes less their groups
 * @param cause one cause
 * @param other another one
 * @returns how much they come at the same notes, -1 to 1
 *
 * Source: Pearson's coefficient of correlation, within groups.
 */
export function togetherness({ causes }: Within, cause: UnevenCause, other: UnevenCause): number {
  const [a, b] = [causes[cause], causes[other]];
  return dot(a, b) / Math.sqrt(dot(a, a) * dot(b, b));
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
