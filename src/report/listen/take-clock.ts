import type { TakeResult } from '../../result/index.js';
import type { Part, PerformedBar } from '../../score/index.js';
import { type TimeStretch, timeStretches } from '../curves/score-axis.js';
import type { TakeData } from './room-data.js';

/**
 * @param result the take
 * @param part the part
 * @returns where the take stands in the part at every moment, and when each performed bar begins and ends
 */
export function takeClock(result: TakeResult, part: Part): Pick<TakeData, 'clock' | 'bars'> {
  const stretches = timeStretches(result, part);
  const heard = new Set(result.notes.flatMap(({ index, onset }) => (onset === undefined ? [] : [index])));
  return {
    clock: knotsOf(stretches),
    bars: part.bars.map((bar) => timeOf(bar, part, stretches, heard)),
  };
}

function knotsOf(stretches: readonly TimeStretch[]): [number, number][] {
  const knots: [number, number][] = [];
  for (const { fromSeconds, fromQuarters, toSeconds, toQuarters } of stretches) {
    for (const [seconds, quarters] of [
      [fromSeconds, fromQuarters],
      [toSeconds, toQuarters],
    ] as const) {
      const knot: [number, number] = [milliseconds(seconds), thousandth(quarters)];
      const last = knots.at(-1);
      if (last === undefined || (knot[0] > last[0] && knot[1] >= last[1])) knots.push(knot);
    }
  }
  return knots;
}

/** A bar with notes was played when one of them was heard; one without when the playing went on through it. */
function timeOf(
  { startQuarters, lengthQuarters }: PerformedBar,
  part: Part,
  stretches: readonly TimeStretch[],
  heard: ReadonlySet<number>,
): [number, number] | null {
  const end = startQuarters + lengthQuarters;
  const own = part.notes.filter(({ onsetQuarters }) => onsetQuarters >= startQuarters && onsetQuarters < end);
  if (own.length > 0 && !own.some(({ index }) => heard.has(index))) return null;
  const inside = stretches.filter((one) => one.fromQuarters < end && one.toQuarters > startQuarters);
  const [first, last] = [inside[0], inside.at(-1)];
  if (first === undefined || last === undefined) return null;
  const from = secondsIn(first, Math.max(startQuarters, first.fromQuarters));
  const to = secondsIn(last, Math.min(end, last.toQuarters));
  return to > from ? [milliseconds(from), milliseconds(to)] : null;
}

function secondsIn({ fromSeconds, toSeconds, fromQuarters, toQuarters }: TimeStretch, quarters: number): number {
  return fromSeconds + ((quarters - fromQuarters) / (toQuarters - fromQuarters)) * (toSeconds - fromSeconds);
}

const milliseconds = (seconds: number): number => Math.round(seconds * 1000);
const thousandth = (value: number): number => Math.round(value * 1000) / 1000;
