import type { Part, PartNote, PerformedBar } from '../../score/index.js';

const LEAST_NOTES = 3;
/** Rounding of fractions of a beat. */
const SLACK = 1e-6;

/**
 * @param part the part
 * @returns its tuplets, and its beats filled with three notes or more, in performed order
 */
export function findGroups(part: Part): PartNote[][] {
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
