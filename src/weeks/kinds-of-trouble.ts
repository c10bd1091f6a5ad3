import type { FindingKind } from '../judge/index.js';
import type { ResultFinding } from '../result/index.js';
import type { BarStory } from './progress-result-schema.js';

/** A finding that is no praise. */
export type Trouble = ResultFinding & { readonly kind: BarStory['kind'] };

/** Findings of these kinds are about more than the bar they begin in. */
const THROUGHOUT: ReadonlySet<FindingKind> = new Set(['tuning-off', 'off-tempo', 'rushing', 'dragging']);

const isTrouble = (finding: ResultFinding): finding is Trouble => finding.kind !== 'went-well';

/**
 * @param finding of a take
 * @returns true when it is about the bar in which it stands
 */
export function isOfABar(finding: ResultFinding): finding is Trouble {
  return isTrouble(finding) && !THROUGHOUT.has(finding.kind);
}

/**
 * @param finding of a take
 * @returns true when it is about the playing as a whole, wherever it begins
 */
export function isThroughout(finding: ResultFinding): finding is Trouble {
  return isTrouble(finding) && THROUGHOUT.has(finding.kind);
}

/**
 * @param finding of a take
 * @returns what it weighs: one that others go before counts as what it is by itself
 */
export function weightOf(finding: ResultFinding): ResultFinding['weight'] {
  return finding.ownWeight ?? finding.weight;
}
