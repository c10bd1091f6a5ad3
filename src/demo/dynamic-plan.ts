import type { Hairpin, Part } from '../score/index.js';

/** Level of mezzo-forte in the file without gain, dBFS. */
export const MEZZO_FORTE_DBFS = -24;

/** dB over mezzo-forte. Source: common practice: about 4 dB a step, a trained player's range. */
const MARK_DB: ReadonlyMap<string, number> = new Map([
  ['pppp', -17],
  ['ppp', -14],
  ['pp', -11],
  ['p', -7],
  ['mp', -3],
  ['mf', 0],
  ['f', 4],
  ['ff', 8],
  ['fff', 11],
  ['ffff', 13],
]);

/** Rise or fall of a hairpin that leads to no mark. */
const FREE_HAIRPIN_DB = 6;

/** A mark this close after a hairpin's end is its goal. */
const GOAL_WITHIN_QUARTERS = 1.01;

/** A level reached at a place; between two knots the level moves in a straight line. */
interface Knot {
  readonly atQuarters: number;
  readonly db: number;
}

function markDb(mark: string): number {
  return MARK_DB.get(mark) ?? 0;
}

function levelOn(knots: readonly Knot[], quarters: number): number {
  let before: Knot = { atQuarters: Number.NEGATIVE_INFINITY, db: knots[0]?.db ?? 0 };
  for (const knot of knots) {
    if (knot.atQuarters > quarters) {
      if (before.atQuarters === Number.NEGATIVE_INFINITY) return knot.db;
      const share = (quarters - before.atQuarters) / (knot.atQuarters - before.atQuarters);
      return before.db + (knot.db - before.db) * share;
    }
    before = knot;
  }
  return before.db;
}

function goalOf(part: Part, hairpin: Hairpin): number | null {
  const latest = hairpin.endQuarters + GOAL_WITHIN_QUARTERS;
  const goal = part.dynamics.find(
    (mark) => mark.atQuarters > hairpin.startQuarters + 1e-6 && mark.atQuarters <= latest,
  );
  return goal ? markDb(goal.mark) : null;
}

/**
 * @param part the part
 * @param contrast 1 plays the full contrast, 0 the mean of the marks throughout
 * @param hairpinShare for the 0-based number of a hairpin, the share of its rise or fall that is played
 * @returns level in dB over mezzo-forte at a score time in quarters
 */
export function dynamicPlan(
  part: Part,
  contrast: number,
  hairpinShare: (number: number) => number,
): (quarters: number) => number {
  const marks = part.dynamics.map((mark) => markDb(mark.mark));
  const centre = marks.length > 0 ? marks.reduce((sum, db) => sum + db, 0) / marks.length : 0;
  const knots: Knot[] = [];
  const events = [
    ...part.dynamics.map((mark) => ({ at: mark.atQuarters, mark: mark.mark, hairpin: null, number: 0 })),
    ...part.hairpins.map((hairpin, number) => ({ at: hairpin.startQuarters, mark: null, hairpin, number })),
  ].sort((a, b) => a.at - b.at || (a.mark === null ? 1 : -1));
  for (const { at, mark, hairpin, number } of events) {
    const before = levelOn(knots, at);
    if (mark !== null) {
      knots.push({ atQuarters: at, db: before }, { atQuarters: at, db: markDb(mark) });
      continue;
    }
    const direction = hairpin.kind === 'crescendo' ? 1 : -1;
    const goal = goalOf(part, hairpin) ?? before + direction * FREE_HAIRPIN_DB;
    const reached = before + (goal - before) * hairpinShare(number);
    knots.push({ atQuarters: at, db: before }, { atQuarters: hairpin.endQuarters, db: reached });
  }
  knots.sort((a, b) => a.atQuarters - b.atQuarters);
  return (quarters) => centre + contrast * (levelOn(knots, quarters) - centre);
}
