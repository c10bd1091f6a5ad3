/**
 * Order statistics and robust lines on plain arrays. Nothing here changes its input.
 */

/**
 * @param values any order; not changed
 * @param share 0 to 1
 * @returns the quantile by linear interpolation between order statistics, NaN when there are no values
 *
 * Source: Hyndman & Fan 1996, definition 7.
 */
export function quantile(values: ArrayLike<number>, share: number): number {
  const sorted = new Float64Array(values).sort();
  if (sorted.length === 0) return Number.NaN;
  const position = share * (sorted.length - 1);
  const below = Math.floor(position);
  const low = sorted[below] as number;
  const high = sorted[Math.min(below + 1, sorted.length - 1)] as number;
  return low + (high - low) * (position - below);
}

/**
 * @param values any order; not changed
 * @returns the median, NaN when there are no values
 *
 * Source: {@link quantile} at one half.
 */
export function median(values: ArrayLike<number>): number {
  return quantile(values, 0.5);
}

/**
 * @param values any order; not changed
 * @returns median absolute deviation scaled to a standard deviation for normal data, NaN when there are no values
 *
 * Source: Rousseeuw & Croux 1993 (factor 1.4826).
 */
export function robustSpread(values: ArrayLike<number>): number {
  const centre = median(values);
  return 1.4826 * median(Float64Array.from(values, (v) => Math.abs(v - centre)));
}

/** Standard error of a median over that of a mean, for normal data. Source: Kenney & Keeping 1962. */
const MEDIAN_ERROR_FACTOR = 1.2533;
/** Half the width of a 95 % interval in standard errors, for normal data. */
const NORMAL_95 = 1.96;

/**
 * @param values any order; not changed
 * @returns standard error of their median, from their robust spread; NaN when there are no values
 *
 * Source: Kenney & Keeping 1962.
 */
export function medianError(values: ArrayLike<number>): number {
  return (MEDIAN_ERROR_FACTOR * robustSpread(values)) / Math.sqrt(values.length);
}

/**
 * @param values any order; not changed
 * @returns the 95 % interval of their median
 *
 * Source: {@link medianError}, normal data.
 */
export function medianInterval(values: ArrayLike<number>): readonly [number, number] {
  const half = NORMAL_95 * medianError(values);
  const centre = median(values);
  return [centre - half, centre + half];
}
