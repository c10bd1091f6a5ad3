/** One way to explain the sound up to a boundary. */
export interface Step {
  readonly note: number;
  readonly boundary: number;
  readonly added: boolean;
  readonly previous: Step | null;
  readonly cost: number;
}

/** Steps in order of their boundaries, and the least of their costs. */
export interface Steps {
  readonly steps: readonly Step[];
  readonly cheapest: number;
}

/**
 * @param steps in order of their boundaries
 * @returns them with the least of their costs, infinite when there are none
 */
export function withCheapest(steps: readonly Step[]): Steps {
  return { steps, cheapest: steps.reduce((least, step) => Math.min(least, step.cost), Number.POSITIVE_INFINITY) };
}
