import type { Part, PartNote, PerformedBar } from '../../score/index.js';
import type { MeasureContext } from '../context/context.js';
import { paceAround } from '../context/pace-around.js';
import type { GroupMeasure } from '../types.js';

const SIDE_NOTES = 8;
const LEAST_PAIRS = 6;
/** The note after a group may be this much later, in shares of the group, than the pace expects it and still end it. */
const MOST_LATE = 0.25;
const LEAST_NOTES = 3;
/** Rounding of fractions of a beat. */
const SLACK = 1e-6;

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

/** Tuplets, and beats filled with three notes or more. */
function findGroups(part: Part): PartNote[][] {
  const bars = new Map(part.bars.map((b) => [`${b.barIndex} ${b.pass}`, b]));
  const beatOf = (n: PartNote) => (n.beat - 1) / beatLength(bars.get(`${n.barIndex} ${n.pass}`));
  const groups: PartNote[][] = [];
  let open: PartNote[] = [];
  const close = () => {
    if (isWhole(open, beatOf, bars)) groups.push(open);
    open = [];
  };
  for (const note of part.notes) {
    const previous = open.at(-1);
    const joins =
      previous !== undefined &&
      !note.grace &&
      note.bar === previous.bar &&
      note.pass === previous.pass &&
      note.restBeforeQuarters === 0 &&
      !previous.fermata &&
      previous.breathAfter === null &&
      note.tuplet?.group === previous.tuplet?.group &&
      (note.tuplet !== null || Math.floor(beatOf(note) + SLACK) === Math.floor(beatOf(previous) + SLACK));
    if (!joins) close();
    if (!note.grace && note.ornament === null) open.push(note);
  }
  close();
  return groups;
}

/** Beats of 6/8, 9/8, 12/8 hold three of the denominator. Source: common practice. */
function beatLength(bar: PerformedBar | undefined): number {
  return bar !== undefined && bar.beatType >= 8 && bar.beats > 3 && bar.beats % 3 === 0 ? 3 : 1;
}

function isWhole(
  group: readonly PartNote[],
  beatOf: (note: PartNote) => number,
  bars: ReadonlyMap<string, PerformedBar>,
): boolean {
  const first = group[0];
  if (first === undefined || group.length < LEAST_NOTES) return false;
  if (first.tuplet !== null) return group.length === first.tuplet.actualNotes;
  const bar = bars.get(`${first.barIndex} ${first.pass}`);
  const beatQuarters = (4 * beatLength(bar)) / (bar?.beatType ?? 4);
  const quarters = group.reduce((sum, n) => sum + n.durationQuarters, 0);
  return Math.abs(beatOf(first) - Math.round(beatOf(first))) < SLACK && Math.abs(quarters - beatQuarters) < SLACK;
}
