import type { FindingData, TakeData } from '../room-data.js';

/** What became of the findings of an earlier take. */
export interface Changes {
  readonly gone: readonly FindingData[];
  readonly fresh: readonly FindingData[];
  readonly still: readonly FindingData[];
  /** in bars that the other take does not have */
  readonly notComparable: readonly FindingData[];
}

/**
 * @param earlier a take
 * @param later a take of the same part
 * @returns findings by what became of them
 */
export function changesBetween(earlier: TakeData, later: TakeData): Changes {
  const keysOf = ({ findings }: TakeData) => new Set(findings.map(({ key }) => key));
  const [before, now] = [keysOf(earlier), keysOf(later)];
  const onlyBefore = earlier.findings.filter(({ key }) => !now.has(key));
  const onlyNow = later.findings.filter(({ key }) => !before.has(key));
  return {
    gone: onlyBefore.filter((finding) => wasPlayed(finding, later)),
    fresh: onlyNow.filter((finding) => wasPlayed(finding, earlier)),
    still: later.findings.filter(({ key }) => before.has(key)),
    notComparable: [
      ...onlyBefore.filter((finding) => !wasPlayed(finding, later)),
      ...onlyNow.filter((finding) => !wasPlayed(finding, earlier)),
    ],
  };
}

function wasPlayed({ places }: FindingData, { bars }: TakeData): boolean {
  if (places === null) return true;
  return bars.slice(places[0], places[1] + 1).every((bar) => bar !== null);
}
