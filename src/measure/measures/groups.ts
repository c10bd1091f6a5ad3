import type { PartNote } from '../../score/index.js';
import type { MeasureContext } from '../context/context.js';
import { paceAround } from '../context/pace-around.js';
import type { GroupMeasure } from '../types.js';
import { findGroups } from './find-groups.js';

const SIDE_NOTES = 8;
const LEAST_PAIRS = 6;
/** The note after a group may be this much later, in shares of the group, than the pace expects it and still end it. */
const MOST_LATE = 0.25;

/**
 * How the notes of tuplets and of beats share their time, against what is written.
 *
 * @param context part and alignment
 * @returns one entry a group of which every note was played
 *
 * Source: definition: share of each note in the time from the first onset to the onset after the group. Where a rest, a
 * breath or a fermata follows, the end is where the local pace puts it.
 */
export function measureGroups(context: MeasureContext): GroupMeasure[] {
  return findGroups(context.part).flatMap((group): GroupMeasure[] => {
    const first = group[0]!;
    const last = group.at(-1)!;
    const onsets = group.map((n) => context.alignment.notes[n.index]!.onsetSeconds);
    if (onsets.some((t) => t === undefined)) return [];
    const pace = paceAround(context, first.index - SIDE_NOTES, last.index + SIDE_NOTES);
    if (pace.pairs < LEAST_PAIRS) return [];
    const start = onsets[0]!;
    const quarters = last.onsetQuarters + last.durationQuarters - first.onsetQuarters;
    const seconds =
      endOf(context, last, start + quarters * pace.secondsAQuarter, quarters * pace.secondsAQuarter) - start;
    const shares = group.map((_, k) => ((onsets[k + 1] ?? start + seconds) - onsets[k]!) / seconds);
    if (shares.some((share) => share <= 0)) return [];
    const place = {
      index: first.index,
      toIndex: last.index,
      bar: first.bar,
      pass: first.pass,
      tuplet: first.tuplet !== null,
    };
    return [{ ...place, seconds, shares, written: group.map((n) => n.durationQuarters / quarters) }];
  });
}

function endOf(context: MeasureContext, last: PartNote, expected: number, length: number): number {
  const next = context.part.notes[last.index + 1];
  const follows =
    next !== undefined && !next.grace && next.restBeforeQuarters === 0 && last.breathAfter === null && !last.fermata;
  const onset = follows ? context.alignment.notes[next.index]!.onsetSeconds : undefined;
  return onset !== undefined && onset - expected <= MOST_LATE * length ? onset : expected;
}
