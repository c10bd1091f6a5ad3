/** What is known of one criterion of a take, for the error of its points. */
export interface CountedCriterion {
  readonly possible: number;
  /** places measured or not played */
  readonly of: number;
  /** findings that cost a place, and those that are in doubt and cost nothing */
  readonly fix: number;
  readonly watch: number;
}

/** Of faults planted in takes of real players so many in a hundred are not found: 5 of 91. Source: tests/measure/README.md. */
const MISSED_SHARE = 5 / 91;
/** So many fixes a minute are not confirmed on real players. Source: tests/measure/README.md. */
const FALSE_A_MINUTE = 0.46;
/** What is only worth a listen is a fault or none: a coin. */
const DOUBT_VARIANCE = 0.25;

/**
 * The standard error of a take's points, from what is known of how the measures err: doubtful places count as the toss of a coin,
 * faults that are missed or wrongly told as rare events, evenly over the criteria.
 *
 * @param criteria those that have points
 * @param minutes length of the take
 * @returns points
 *
 * Source: variance of a Bernoulli variable, and of a Poisson variable (textbook); errors of independent parts add up in squares.
 */
export function pointsError(criteria: readonly CountedCriterion[], minutes: number): number {
  const told = criteria.filter(({ of }) => of > 0);
  const variance = told.reduce((sum, { possible, of, fix, watch }) => {
    const rare = (MISSED_SHARE / (1 - MISSED_SHARE)) * fix + (FALSE_A_MINUTE * minutes) / told.length;
    return sum + (possible / of) ** 2 * (DOUBT_VARIANCE * watch + rare);
  }, 0);
  return Math.sqrt(variance);
}
