import type { MeasureContext } from '../context/context.js';
import type { GroupMeasure, UnevenCause } from '../types.js';
import { causesIn } from './causes-in.js';

/** A note this far from its length is misheard, or a slip of its own. */
const LEAST_OF_WRITTEN = 0.4;
const MOST_OF_WRITTEN = 2;

/** A note of a tuplet or a beat. */
export interface GroupedNote {
  /** count of its group */
  readonly group: number;
  /** length over the written one, less 1 */
  readonly longer: number;
  /** length as written */
  readonly seconds: number;
  readonly causes: ReadonlySet<UnevenCause>;
}

/**
 * @param context part and alignment
 * @param groups how tuplets and beats share their time
 * @returns their notes, of groups in which every onset is sure; a note before a rest has no end, and is left out
 */
export function groupedNotes(context: MeasureContext, groups: readonly GroupMeasure[]): GroupedNote[] {
  const causesOf = causesIn(context.part);
  const clear = groups.filter((group) => isClear(context, group));
  return clear.flatMap((one, group) =>
    one.shares.flatMap((share, k): GroupedNote[] => {
      const written = one.written[k]!;
      const causes = causesOf(one, one.index + k);
      return causes === null ? [] : [{ group, longer: share / written - 1, seconds: one.seconds * written, causes }];
    }),
  );
}

/** Whether all is as written, with nothing added, begun again, repeated or bent in tempo, up to the note after it. */
function isClear({ part, alignment }: MeasureContext, { index, toIndex, shares, written }: GroupMeasure): boolean {
  const here = part.notes.slice(index, toIndex + 2);
  const start = part.notes[index]!.onsetQuarters;
  return (
    here.every((n) => alignment.notes[n.index]!.status === 'as-written') &&
    here.every((n, k) => n.soundingMidi !== here[k - 1]?.soundingMidi) &&
    !alignment.added.some((a) => a.afterIndex >= index - 1 && a.afterIndex <= toIndex) &&
    !alignment.restarts.some((r) => r.resumedAtIndex > index && r.resumedAtIndex <= toIndex + 1) &&
    !part.tempoBends.some((b) => start >= b.startQuarters - 1 && start < b.endQuarters) &&
    shares.every((s, k) => s > LEAST_OF_WRITTEN * written[k]! && s < MOST_OF_WRITTEN * written[k]!)
  );
}
