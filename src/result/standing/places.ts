/** A share of the points with its standard error, both from 0 to 1. */
export interface Measured {
  readonly share: number;
  readonly error: number;
}

/** The best and the worst place a take can have, from 1, as far as its points tell. */
export interface PlaceRange {
  readonly best: number;
  readonly worst: number;
}

/** A difference this many standard errors wide is one. Source: normal distribution, 95 %. */
const SURE = 1.96;

/**
 * The order of takes as far as it is one: a difference smaller than the error of measuring is none.
 *
 * @param takes in any order
 * @returns one range a take: behind all that are surely better, before all that are surely worse; a single place is sure
 *
 * Source: standard error of a difference of independent values (textbook).
 */
export function placesOf(takes: readonly Measured[]): PlaceRange[] {
  const surely = (a: Measured, b: Measured) => a.share - b.share > SURE * Math.hypot(a.error, b.error);
  return takes.map((take) => ({
    best: 1 + takes.filter((other) => surely(other, take)).length,
    worst: takes.length - takes.filter((other) => surely(take, other)).length,
  }));
}
