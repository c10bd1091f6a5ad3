import type { Brief } from '../brief/index.js';
import type { Tally } from './count-places.js';
import type { Criterion } from './finding-kinds.js';
import type { CriterionPoints } from './types.js';

/**
 * Points of one criterion, as a teacher's brief weighs them.
 *
 * @param brief the teacher's brief
 * @param criterion which one
 * @param judged false when the brief or the recording keeps it out
 * @param tally places measured and places as asked for
 * @returns points given and points possible, to a tenth; null given where nothing could be measured
 *
 * Source: definition: points possible × places as asked for ÷ places measured. The formula is printed beside the points.
 */
export function pointsFor(brief: Brief, criterion: Criterion, judged: boolean, tally: Tally): CriterionPoints {
  const possible = brief.criteria[criterion].points;
  if (!judged || tally.of === 0) return { possible, given: null };
  return { possible, given: Math.round((10 * possible * tally.met) / tally.of) / 10 };
}
