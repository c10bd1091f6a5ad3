import type { FindingKind } from '../../judge/index.js';

const WHOLE_TAKE: ReadonlySet<FindingKind> = new Set(['tuning-off', 'off-tempo']);

/**
 * @param kind kind of a finding
 * @returns true when the finding is about the take as a whole and its bar only says where the take begins
 */
export function concernsWholeTake(kind: FindingKind): boolean {
  return WHOLE_TAKE.has(kind);
}
