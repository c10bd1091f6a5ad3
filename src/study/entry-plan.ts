import type { Part, PartNote, PerformedBar } from '../score/index.js';
import { firstPasses } from './first-passes.js';
import { beatName } from './names.js';
import type { EntryPlan } from './types.js';

/** Equal within rounding, quarters. */
const SAME = 1e-3;
const VALUES: readonly (readonly [quarters: number, name: string])[] = [
  [0.125, 'a thirty-second'],
  [0.25, 'a sixteenth'],
  [1 / 3, 'a triplet eighth'],
  [0.5, 'an eighth'],
  [2 / 3, 'two triplet eighths'],
  [0.75, 'a dotted eighth'],
  [1, 'a quarter'],
  [1.5, 'a dotted quarter'],
  [2, 'a half'],
  [3, 'a dotted half'],
];

/**
 * Entries after rests and what to count inside so that they come on time.
 *
 * @param part the part
 * @returns entries in the order of the page, those that are counted alike together
 *
 * Source: common practice: a rest is counted in small values.
 */
export function entryPlan(part: Part): EntryPlan[] {
  const entries = new Map<string, string[]>();
  for (const note of firstPasses(part)) {
    if (note.index === 0 || note.grace || note.restBeforeQuarters < SAME || note.heldRestBefore === true) continue;
    const bar = part.bars.find(({ barIndex }) => barIndex === note.barIndex);
    if (bar === undefined) continue;
    const words = entryWords(note, bar);
    entries.set(words, [...(entries.get(words) ?? []), note.bar]);
  }
  return [...entries].map(([words, bars]) => ({ bars, words }));
}

function entryWords(note: PartNote, bar: PerformedBar): string {
  const rest = note.restBeforeQuarters;
  return `Rest of ${restName(rest, bar)}. Count ${unitFor(note, bar)} through it and come in ${placeName(note, bar)}.`;
}

function restName(quarters: number, bar: PerformedBar): string {
  const named = VALUES.find(([value]) => Math.abs(value - quarters) < SAME);
  if (named !== undefined) return named[1];
  const bars = quarters / bar.lengthQuarters;
  if (bars >= 1 && Math.abs(bars - Math.round(bars)) < SAME) {
    return Math.round(bars) === 1 ? 'a whole bar' : `${Math.round(bars)} bars`;
  }
  return `${Math.round(quarters * 100) / 100} quarters`;
}

/** One value smaller than the smallest that rest and entry need. */
function unitFor(note: PartNote, bar: PerformedBar): string {
  const place = ((note.beat - 1) * 4) / bar.beatType;
  const fits = (unit: number): boolean =>
    [place, note.restBeforeQuarters].every((value) => Math.abs(value / unit - Math.round(value / unit)) < SAME * 4);
  if (fits(1) && bar.lengthQuarters > 0 && note.restBeforeQuarters >= 2 * bar.lengthQuarters) {
    return 'the bars on your fingers, and the last one in eighths';
  }
  if (fits(0.5)) return 'eighths';
  if (fits(1 / 3)) return 'triplet eighths';
  if (fits(0.25)) return 'sixteenths';
  return 'the smallest notes of the passage';
}

function placeName(note: PartNote, bar: PerformedBar): string {
  const whole = Math.floor(note.beat + SAME);
  const share = note.beat - whole;
  if (Math.abs(share) < SAME) return `exactly on beat ${whole}`;
  if (bar.beatType === 4 && Math.abs(share - 0.5) < SAME) return `on the “and” of beat ${whole}`;
  return `on beat ${beatName(note.beat)}`;
}
