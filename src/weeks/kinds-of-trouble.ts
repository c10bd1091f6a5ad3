import type { FindingKind } from '../judge/index.js';
import type { ResultFinding } from '../result/index.js';
import type { Trouble } from './types.js';

/** Findings of these kinds are about more than the bar they begin in. */
const THROUGHOUT: ReadonlySet<FindingKind> = new Set(['tuning-off', 'off-tempo', 'rushing', 'dragging']);

/**
 * @param finding of a take
 * @returns true when it is no praise
 */
export function isTrouble(finding: ResultFinding): finding is ResultFinding & Pick<Trouble, 'kind'> {
  return finding.kind !== 'went-well';
}

/**
 * @param trouble of a take
 * @returns true when it is about the bar in which it stands
 */
export function isOfABar(trouble: Trouble): boolean {
  return !THROUGHOUT.has(trouble.kind);
}

/**
 * @param trouble of a take
 * @returns true when it is about the playing as a whole, wherever it begins
 */
export function isThroughout(trouble: Trouble): boolean {
  return THROUGHOUT.has(trouble.kind);
}

/**
 * @param finding of a take
 * @returns what it weighs: one that others go before counts as what it is by itself
 */
export function weightOf(finding: ResultFinding): ResultFinding['weight'] {
  return finding.ownWeight ?? finding.weight;
}
