import type { Trap } from '../../study/index.js';

/** More bars than this in one excerpt are too long for a line. */
const MOST_BARS = 3;

/** Traps that are shown in one excerpt. */
export interface TrapGroup {
  readonly fromBarIndex: number;
  readonly toBarIndex: number;
  /** printed numbers of the first and the last bar that holds a trap */
  readonly bar: string;
  readonly toBar: string;
  readonly traps: readonly Trap[];
}

/**
 * Puts neighbouring traps together; the sign that leads astray is shown with the note.
 *
 * @param traps in the order of the page
 * @returns groups in the same order
 */
export function trapGroups(traps: readonly Trap[]): TrapGroup[] {
  const groups: TrapGroup[] = [];
  for (const trap of traps) {
    const from = Math.min(trap.barIndex, trap.because?.barIndex ?? trap.barIndex);
    const last = groups.at(-1);
    const joined = last === undefined ? from : Math.min(last.fromBarIndex, from);
    if (last !== undefined && from <= last.toBarIndex + 1 && trap.barIndex - joined < MOST_BARS) {
      groups[groups.length - 1] = {
        ...last,
        fromBarIndex: joined,
        toBarIndex: Math.max(last.toBarIndex, trap.barIndex),
        toBar: trap.bar,
        traps: [...last.traps, trap],
      };
    } else {
      groups.push({ fromBarIndex: from, toBarIndex: trap.barIndex, bar: trap.bar, toBar: trap.bar, traps: [trap] });
    }
  }
  return groups;
}
