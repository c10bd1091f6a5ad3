import type { ResultFinding } from '../result/index.js';

/**
 * @param praise a finding that praises
 * @returns true when it is about the take as a whole
 */
export function isOfWholeTake({ index, toBar, beat }: ResultFinding): boolean {
  return index === undefined && toBar === undefined && beat === undefined;
}
