import type { StudyPlan } from '../../study/index.js';

/** Marks so far apart must be plainly different. Source: common practice. */
const PLAIN_STEPS = 2;

/**
 * @param plan levels and hairpins of the étude
 * @param i place among the levels
 * @returns true when this level must differ plainly, at once, from the one before; where a hairpin leads from one to the
 *   next they are no contrast
 */
export function isPlainStep({ levels, hairpins }: Pick<StudyPlan, 'levels' | 'hairpins'>, i: number): boolean {
  const [before, level] = [levels[i - 1], levels[i]];
  if (before === undefined || level === undefined || level.steps === null) return false;
  if (Math.abs(level.steps) < PLAIN_STEPS) return false;
  return !hairpins.some(({ startQuarters: at }) => at >= before.atQuarters && at < level.atQuarters);
}
