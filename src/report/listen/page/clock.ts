/** Pairs that rise in both, between which everything runs evenly. */
export type Knots = readonly (readonly [number, number])[];

/**
 * @param knots rising in the first number of each
 * @param x a first number
 * @returns the second number that belongs to it; beyond the ends, that of the end
 */
export function alongKnots(knots: Knots, x: number): number {
  return between(knots, x, 0, 1);
}

/**
 * @param knots rising in the second number of each
 * @param y a second number
 * @returns the first number that belongs to it; beyond the ends, that of the end
 */
export function againstKnots(knots: Knots, y: number): number {
  return between(knots, y, 1, 0);
}

function between(knots: Knots, value: number, given: 0 | 1, asked: 0 | 1): number {
  let [low, high] = [0, knots.length - 1];
  if (high < 0) return 0;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((knots[middle]?.[given] ?? 0) <= value) low = middle;
    else high = middle;
  }
  const [from, to] = [knots[low] ?? [0, 0], knots[high] ?? [0, 0]];
  const whole = to[given] - from[given];
  const share = whole <= 0 ? 0 : Math.min(1, Math.max(0, (value - from[given]) / whole));
  return from[asked] + share * (to[asked] - from[asked]);
}
