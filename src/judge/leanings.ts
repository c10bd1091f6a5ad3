import { isMeasured } from '../base/index.js';
import {
  type CauseMeasure,
  causesIn,
  type GroupMeasure,
  type LengthDifference,
  type UnevenCause,
  type UnevennessMeasure,
} from '../measure/index.js';
import type { JudgeInput } from './observed/judge-input.js';
import type { Leaning } from './observed/leaning.js';

/** What is looked at. */
interface LeaningInput extends Pick<JudgeInput, 'standards'> {
  readonly measurements: Pick<JudgeInput['measurements'], 'unevenness'>;
}

/** Causes that come together less than this are no reason to doubt each other. Source: working value. */
const TOGETHER = 0.3;

/**
 * What the unevenness of tuplets and beats goes with, where the numbers carry it: the joint interval excludes zero, and the
 * difference is beyond the standard and beyond the measure's own error. A cause that is nothing any more beside another one is
 * the other's; where neither stands beside the other, it is told that it may be either.
 *
 * @param input one take
 * @returns causes, the largest difference first; empty where nothing can be told
 *
 * Source: standards leanLeast, onsetError.
 */
export function leaningsOf({ measurements, standards }: LeaningInput): Leaning[] {
  const { unevenness } = measurements;
  if (!isMeasured(unevenness)) return [];
  const isPlain = (d: LengthDifference | undefined, seconds: number): boolean => {
    if (d === undefined) return false;
    const [low, high] = d.jointIntervalShare;
    const size = Math.abs(d.differenceShare);
    return low * high > 0 && size > standards.leanLeast.value && size * seconds > standards.onsetError.value;
  };
  const plain = unevenness.causes.filter((one) => isPlain(one, one.noteSeconds));
  const stands = (one: CauseMeasure, other: UnevenCause): boolean =>
    isPlain(one.beside.find(({ cause }) => cause === other)?.difference, one.noteSeconds);
  const told = plain.flatMap((one): Leaning[] => {
    const doubted = one.beside.filter(({ cause, together }) => Math.abs(together) >= TOGETHER && !stands(one, cause));
    if (doubted.some(({ cause }) => isOthers(unevenness, one, cause, stands, plain))) return [];
    const { cause, differenceShare, intervalShare, count } = one;
    return [{ causes: [cause, ...doubted.map((d) => d.cause)], differenceShare, intervalShare, count }];
  });
  const sorted = told.toSorted((a, b) => Math.abs(b.differenceShare) - Math.abs(a.differenceShare));
  return sorted.filter((one, i) => !sorted.slice(0, i).some((larger) => larger.causes.includes(one.causes[0]!)));
}

/** Whether another cause explains this one: it is plain by itself, and stays so beside this one. */
function isOthers(
  { causes }: UnevennessMeasure,
  one: CauseMeasure,
  other: UnevenCause,
  stands: (one: CauseMeasure, other: UnevenCause) => boolean,
  plain: readonly CauseMeasure[],
): boolean {
  const measured = causes.find(({ cause }) => cause === other)!;
  return plain.includes(measured) && stands(measured, one.cause);
}

/**
 * @param input one take
 * @param group a tuplet or a beat
 * @param which the note of it that is furthest from its length, from 0
 * @returns what this take's unevenness goes with, where this note shows it, too
 */
export function leaningAt(input: JudgeInput, { index, toIndex, shares, written }: GroupMeasure, which: number) {
  const longer = shares[which]! - written[which]!;
  const causes = causesIn(input.part)({ index, toIndex }, index + which);
  return leaningsOf(input).find(
    (one) => one.differenceShare * longer > 0 && one.causes.every((cause) => causes?.has(cause)),
  );
}
