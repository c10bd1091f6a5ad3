/**
 * Quantile of Student's t, for intervals from few observations.
 *
 * @param normal the same quantile of the normal distribution, e.g. 1.96 for a two-sided 95 % interval
 * @param degreesOfFreedom at least 4; below, the series is off by more than a hundredth
 * @returns the quantile; that of the normal distribution for ever more degrees of freedom
 *
 * Source: Abramowitz & Stegun 1964, 26.7.5 (expansion in powers of one over the degrees of freedom).
 */
export function studentQuantile(normal: number, degreesOfFreedom: number): number {
  const [z, df] = [normal, degreesOfFreedom];
  const g1 = (z ** 3 + z) / 4;
  const g2 = (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96;
  const g3 = (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384;
  const g4 = (79 * z ** 9 + 776 * z ** 7 + 1482 * z ** 5 - 1920 * z ** 3 - 945 * z) / 92160;
  return z + g1 / df + g2 / df ** 2 + g3 / df ** 3 + g4 / df ** 4;
}
