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
 * Findings of two takes are one when they are of one kind and at one place; of those that go over several bars, when they
 * have bars in common.
 *
 * @param earlier a take
 * @param later a take of the same part
 * @returns findings by what became of them
 */
export function changesBetween(earlier: TakeData, later: TakeData): Changes {
  const onlyBefore = earlier.findings.filter((finding) => !later.findings.some((other) => isSame(finding, other)));
  const onlyNow = later.findings.filter((finding) => !earlier.findings.some((other) => isSame(finding, other)));
  return {
    gone: onlyBefore.filter((finding) => wasPlayed(finding, later)),
    fresh: onlyNow.filter((finding) => wasPlayed(finding, earlier)),
    still: later.findings.filter((finding) => !onlyNow.includes(finding)),
    notComparable: [
      ...onlyBefore.filter((finding) => !wasPlayed(finding, later)),
      ...onlyNow.filter((finding) => !wasPlayed(finding, earlier)),
    ],
  };
}

function isSame(one: FindingData, other: FindingData): boolean {
  if (one.key === other.key) return true;
  const [a, b] = [one.places, other.places];
  if (one.kind !== other.kind || a === null || b === null) return false;
  const isLong = a[1] > a[0] || b[1] > b[0];
  return isLong && a[0] <= b[1] && b[0] <= a[1];
}

function wasPlayed({ places }: FindingData, { bars }: TakeData): boolean {
  if (places === null) return true;
  return bars.slice(places[0], places[1] + 1).every((bar) => bar !== null);
}
