import type { ResultFinding } from '../../../result/index.js';
import type { Part } from '../../../score/index.js';

/** More bars than this are not read note by note. */
const MOST_BARS = 8;

/** Printed bars, counted from 0. */
export interface BarsShown {
  readonly from: number;
  readonly to: number;
}

/**
 * Which printed bars an excerpt has to hold so that its mark can be understood: those of the notes concerned, and of the
 * neighbour a mark leans on.
 *
 * @param finding of the take
 * @param part the part
 * @returns the bars, a stretch that can be printed in one piece; null for a finding that names no note
 */
export function barsShown(finding: ResultFinding, part: Part): BarsShown | null {
  const first = finding.index === undefined ? undefined : part.notes[finding.index];
  if (first === undefined) return null;
  const indexes = [leadIn(finding, first.index), first.index, lastNote(finding, first.index, part)];
  const bars = indexes.flatMap((index) => part.notes[index]?.barIndex ?? []);
  // through a repeat the next note may be printed far away
  const near = bars.filter((bar) => Math.abs(bar - first.barIndex) < MOST_BARS);
  const [from, to] = [Math.min(...near), Math.max(...near)];
  return to - from < MOST_BARS ? { from, to } : { from: first.barIndex, to: first.barIndex + MOST_BARS - 1 };
}

function leadIn({ kind }: ResultFinding, index: number): number {
  return kind === 'slur-broken' || kind === 'late-entry' || kind === 'early-entry' || kind.endsWith('contrast')
    ? Math.max(0, index - 1)
    : index;
}

function lastNote({ kind, toIndex, toBar, bar }: ResultFinding, index: number, part: Part): number {
  if (toIndex !== undefined) return toIndex;
  if (kind === 'restart' && toBar !== undefined && toBar !== bar)
    return part.notes.find((note) => note.index > index && note.bar === toBar)?.index ?? index;
  return kind === 'added-note' || kind === 'hesitation' || kind.startsWith('breath') ? index + 1 : index;
}
