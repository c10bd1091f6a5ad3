import { median, type NotMeasured, notMeasured } from '../../base/index.js';
import type { MeasureContext } from '../context/context.js';
import type { CauseMeasure, GroupMeasure, UnevenCause, UnevennessMeasure } from '../types.js';
import { type GroupedNote, groupedNotes } from '../uneven/grouped-notes.js';
import { lengthDifference, togetherness, within } from '../uneven/within-groups.js';

const CAUSES: readonly UnevenCause[] = ['leap', 'articulation', 'first', 'last', 'register'];
/** So many groups must have notes with a cause and notes without it. */
const LEAST_GROUPS = 6;

/**
 * What the unevenness of tuplets and beats goes with: by how much notes before a leap, at a change of articulation, at the
 * beginning and at the end of a group, and before another register are longer than the other notes of their groups.
 *
 * @param context part and alignment
 * @param groups how tuplets and beats share their time
 * @returns differences with intervals, each also beside every other cause, or why there are none
 *
 * Source: see lengthDifference; that several causes are looked at is allowed for in the joint intervals.
 */
export function measureUnevenness(
  context: MeasureContext,
  groups: readonly GroupMeasure[],
): UnevennessMeasure | NotMeasured {
  if (groups.length === 0) return notMeasured('no-groups');
  const notes = groupedNotes(context, groups);
  const looked = new Set(notes.map(({ group }) => group)).size;
  const enough = CAUSES.filter((cause) => varyingGroups(notes, cause).size >= LEAST_GROUPS);
  if (enough.length === 0) return notMeasured('too-few-groups');
  const data = within(notes, enough);
  return {
    groups: looked,
    causes: enough.map((cause): CauseMeasure => {
      const varying = varyingGroups(notes, cause);
      const there = notes.filter(({ group }) => varying.has(group));
      const having = there.filter(({ causes }) => causes.has(cause));
      const beside = enough.flatMap((other) => {
        if (other === cause) return [];
        const difference = lengthDifference(data, cause, other);
        const together = togetherness(data, cause, other);
        return [{ cause: other, together, ...(difference === null ? {} : { difference }) }];
      });
      const noteSeconds = median(having.map(({ seconds }) => seconds));
      const counts = { count: having.length, others: there.length - having.length };
      return { cause, ...counts, noteSeconds, ...lengthDifference(data, cause)!, beside };
    }),
  };
}

/** Groups with notes of both kinds. */
function varyingGroups(notes: readonly GroupedNote[], cause: UnevenCause): Set<number> {
  const [withIt, without] = [true, false].map(
    (has) => new Set(notes.filter(({ causes }) => causes.has(cause) === has).map(({ group }) => group)),
  );
  return new Set([...withIt!].filter((group) => without!.has(group)));
}
