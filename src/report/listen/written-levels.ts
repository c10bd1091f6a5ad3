import type { Part, PartNote } from '../../score/index.js';

/** Decibels over mezzo-forte. Source: common practice: about 4 dB a step, what a trained player reaches. */
const LEVELS: Readonly<Record<string, number>> = {
  pppp: -17,
  ppp: -14,
  pp: -11,
  p: -7,
  mp: -3,
  mf: 0,
  f: 4,
  ff: 8,
  fff: 11,
  ffff: 13,
};
/** A hairpin that leads to no mark rises or falls by this; a mark so near after its end is its goal. */
const FREE_HAIRPIN_DB = 6;
const GOAL_WITHIN_QUARTERS = 1.01;
/** Source: common practice. */
const ACCENT_DB = 4;
const STRONG_ACCENT_DB = 6;
const EVENT_DB = 5;

/**
 * @param part the part
 * @returns how loud a note is asked to be, dB over mezzo-forte
 */
export function writtenLevels(part: Part): (note: PartNote) => number {
  const events = new Set(part.dynamicEvents.map(({ index }) => index));
  return (note) => levelAt(part, note.onsetQuarters) + accentOf(note) + (events.has(note.index) ? EVENT_DB : 0);
}

function levelAt(part: Part, quarters: number): number {
  const under = part.hairpins.find((one) => quarters >= one.startQuarters && quarters < one.endQuarters);
  if (under === undefined) return standingAt(part, quarters);
  const from = standingAt(part, under.startQuarters);
  const share = (quarters - under.startQuarters) / (under.endQuarters - under.startQuarters);
  return from + (goalOf(part, under, from) - from) * share;
}

/** The level in force: the last mark's, or what the hairpin after it has led to. */
function standingAt(part: Part, quarters: number): number {
  const mark = part.dynamics.findLast(({ atQuarters }) => atQuarters <= quarters);
  const since = mark?.atQuarters ?? 0;
  const first = mark === undefined ? 0 : (LEVELS[mark.mark] ?? 0);
  return part.hairpins
    .filter(({ startQuarters, endQuarters }) => startQuarters >= since && endQuarters <= quarters)
    .reduce((level, hairpin) => goalOf(part, hairpin, level), first);
}

function goalOf(part: Part, { kind, startQuarters, endQuarters }: Part['hairpins'][number], from: number): number {
  const goal = part.dynamics.find(
    ({ atQuarters }) => atQuarters > startQuarters && atQuarters <= endQuarters + GOAL_WITHIN_QUARTERS,
  );
  if (goal !== undefined) return LEVELS[goal.mark] ?? from;
  return from + (kind === 'crescendo' ? FREE_HAIRPIN_DB : -FREE_HAIRPIN_DB);
}

function accentOf({ articulations }: PartNote): number {
  if (articulations.includes('strong-accent')) return STRONG_ACCENT_DB;
  return articulations.includes('accent') ? ACCENT_DB : 0;
}
