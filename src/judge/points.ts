import type { Brief } from '../brief/index.js';
import type { Tally } from './count-places.js';
import type { Criterion } from './finding-kinds.js';
import type { CriterionPoints } from './types.js';

/**
 * Points of one criterion, as a teacher's brief weighs them.
 *
 * @param brief the teacher's brief
 * @param criterion which one
 * @param tally places measured or not played, and places as asked for
 * @param counts false when the brief or the recording keeps it out
 * @returns points given and points possible, to a tenth; null given where nothing could be measured
 *
 * Source: definition: points possible × places as asked for ÷ places measured or not played. The formula is printed beside
 * the points.
 */
export function pointsFor(brief: Brief, criterion: Criterion, tally: Tally, counts: boolean): CriterionPoints {
  const possible = brief.criteria[criterion].points;
  if (!counts || tally.of === 0) return { possible, given: null };
  return { possible, given: Math.round((10 * possible * tally.met) / tally.of) / 10 };
}
