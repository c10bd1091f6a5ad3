import type { Part } from '../../score/index.js';

/** Marks from soft to loud. Source: common practice. */
const ORDER = ['pppp', 'ppp', 'pp', 'p', 'mp', 'mf', 'f', 'ff', 'fff', 'ffff'];
/** From one mark to the next; only proportions matter here. */
const STEP_DB = 4;
const LEAST_MARKS = 2;
/** A hairpin leads to the mark that stands so few notes after its end. */
const NOTES_TO_MARK = 2;

/**
 * How loud each note is written, as far as the marks say.
 *
 * @param part the part
 * @returns dB a note, NaN before the first mark; null when the part has no two different marks
 *
 * Hairpins go evenly from mark to mark.
 */
export function writtenPlan(part: Part): Float64Array | null {
  const marks = part.dynamics.filter((d) => ORDER.includes(d.mark));
  if (new Set(marks.map((d) => d.mark)).size < LEAST_MARKS) return null;
  const plan = new Float64Array(part.notes.length).fill(Number.NaN);
  for (const { mark, index } of marks) plan.fill(STEP_DB * ORDER.indexOf(mark), index);
  for (const { index, toIndex } of part.hairpins) {
    const next = marks.find((d) => d.index > index);
    if (next === undefined || next.index > toIndex + NOTES_TO_MARK || toIndex <= index) continue;
    const from = plan[index]!;
    const change = STEP_DB * ORDER.indexOf(next.mark) - from;
    for (let i = index; i <= toIndex; i++) plan[i] = from + (change * (i - index)) / (toIndex - index);
  }
  return plan;
}
