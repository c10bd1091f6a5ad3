import type { Part, PartNote, PerformedBar } from '../score/index.js';
import { firstPasses } from './first-passes.js';
import type { EntryPlan, RestValue } from './types.js';

/** Equal within rounding, quarters. */
const SAME = 1e-3;
/** Parts of a beat that have a figure. */
const NAMED_PARTS = [1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4];
/** A part of a beat is taken for a named one within this, beats. */
const NEAR_PART = 0.02;
const VALUES: readonly (readonly [quarters: number, value: RestValue])[] = [
  [0.125, 'thirty-second'],
  [0.25, 'sixteenth'],
  [1 / 3, 'triplet-eighth'],
  [0.5, 'eighth'],
  [2 / 3, 'two-triplet-eighths'],
  [0.75, 'dotted-eighth'],
  [1, 'quarter'],
  [1.5, 'dotted-quarter'],
  [2, 'half'],
  [3, 'dotted-half'],
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
  const entries = new Map<string, { bars: string[]; how: Omit<EntryPlan, 'bars'> }>();
  for (const note of firstPasses(part)) {
    if (note.index === 0 || note.grace || note.restBeforeQuarters < SAME || note.heldRestBefore === true) continue;
    const bar = part.bars.find(({ barIndex }) => barIndex === note.barIndex);
    if (bar === undefined) continue;
    const how = { rest: restOf(note.restBeforeQuarters, bar), count: unitFor(note, bar), entry: entryOf(note, bar) };
    const known = entries.get(JSON.stringify(how));
    if (known === undefined) entries.set(JSON.stringify(how), { bars: [note.bar], how });
    else known.bars.push(note.bar);
  }
  return [...entries.values()].map(({ bars, how }) => ({ bars, ...how }));
}

function restOf(quarters: number, bar: PerformedBar): EntryPlan['rest'] {
  const named = VALUES.find(([value]) => Math.abs(value - quarters) < SAME);
  if (named !== undefined) return { value: named[1] };
  const bars = quarters / bar.lengthQuarters;
  if (bars >= 1 && Math.abs(bars - Math.round(bars)) < SAME) return { bars: Math.round(bars) };
  return { quarters: Math.round(quarters * 100) / 100 };
}

/** One value smaller than the smallest that rest and entry need. */
function unitFor(note: PartNote, bar: PerformedBar): EntryPlan['count'] {
  const place = ((note.beat - 1) * 4) / bar.beatType;
  const fits = (unit: number): boolean =>
    [place, note.restBeforeQuarters].every((value) => Math.abs(value / unit - Math.round(value / unit)) < SAME * 4);
  if (fits(1) && bar.lengthQuarters > 0 && note.restBeforeQuarters >= 2 * bar.lengthQuarters) {
    return 'bars-then-eighths';
  }
  if (fits(0.5)) return 'eighths';
  if (fits(1 / 3)) return 'triplet-eighths';
  if (fits(0.25)) return 'sixteenths';
  return 'smallest';
}

function entryOf({ beat }: PartNote, bar: PerformedBar): EntryPlan['entry'] {
  const whole = Math.floor(beat + SAME);
  const part = beat - whole;
  if (Math.abs(part) < SAME) return { how: 'on', beat: whole };
  if (bar.beatType === 4 && Math.abs(part - 0.5) < SAME) return { how: 'half', beat: whole };
  const near = NAMED_PARTS.find((value) => Math.abs(part - value) < NEAR_PART);
  return near === undefined ? { how: 'after', beat: whole } : { how: 'part', beat: whole + near };
}
