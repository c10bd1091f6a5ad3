import type { WorkingNoise } from './measures.js';

/** How much weight the working value has: as much as this many pairs of takes. Source: working value. */
export const WORKING_WEIGHT = 6;

/** Two-sided 95 % point of the normal distribution. Source: any table of the normal distribution. */
const NINETY_FIVE = 1.96;

/** Scatter within days, from the takes themselves. */
export interface WithinDays {
  /** pooled standard deviation, NaN when no day has two takes */
  readonly standardDeviation: number;
  readonly degreesOfFreedom: number;
  /** days with two takes or more */
  readonly days: number;
}

/**
 * @param days numbers of the takes of one player on one day, a list a day
 * @returns how far takes of one day lie apart, pooled over the days
 *
 * Source: Bland & Altman 1996, "Measurement error", BMJ 313:744 (within-subject standard deviation by one-way analysis of
 * variance).
 */
export function withinDays(days: readonly (readonly number[])[]): WithinDays {
  let squares = 0;
  let degreesOfFreedom = 0;
  const several = days.filter((day) => day.length > 1);
  for (const day of several) {
    const mean = day.reduce((sum, value) => sum + value, 0) / day.length;
    squares += day.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    degreesOfFreedom += day.length - 1;
  }
  return { standardDeviation: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom, days: several.length };
}

/**
 * @param noise standard deviations of measuring and of playing
 * @returns the standard deviation of one take: both together, as independent
 *
 * Source: variances of independent errors add (JCGM 100:2008, 5.1.2).
 */
export function workingDeviation(noise: WorkingNoise): number {
  return Math.hypot(noise.measuring, noise.playing);
}

/**
 * Leans on the working value where the takes tell little, and on the takes where they tell much.
 *
 * @param found scatter within days
 * @param working standard deviation to lean on
 * @returns standard deviation of one take
 *
 * Source: Smyth 2004, "Linear models and empirical Bayes methods", section 4 (moderated variance), with fixed weight.
 */
export function moderatedDeviation(found: WithinDays, working: number): number {
  const { degreesOfFreedom: df } = found;
  if (df === 0) return working;
  const squares = WORKING_WEIGHT * working ** 2 + df * found.standardDeviation ** 2;
  return Math.sqrt(squares / (WORKING_WEIGHT + df));
}

/**
 * @param deviation standard deviation of one take
 * @param takes takes of the earlier day, at least 1
 * @param otherTakes takes of the later day, at least 1
 * @returns the smallest difference of the days' means that is called a change; 1.96 · √2 · s for one take a day
 *
 * Source: Bland & Altman 1986, Lancet 327:307 (repeatability); Weir 2005, J Strength Cond Res 19:231 (minimal difference
 * to be considered real).
 */
export function smallestChange(deviation: number, takes = 1, otherTakes = 1): number {
  return NINETY_FIVE * deviation * Math.sqrt(1 / takes + 1 / otherTakes);
}
