import type { PrintedBar } from '../printed/types.js';

/** One ending bracket. */
export interface Ending {
  readonly from: number;
  readonly to: number;
  readonly numbers: ReadonlySet<number>;
  /** highest number among the endings that stand side by side: how often the passage is played */
  readonly lastNumber: number;
  readonly lastOfGroup: boolean;
  /** numbers of all endings that stand side by side */
  readonly groupNumbers: ReadonlySet<number>;
}

interface Bracket {
  from: number;
  to: number;
  numbers: readonly number[];
}

/**
 * @param bars bars as printed
 * @returns for each bar the ending it stands under, null when none
 *
 * Source: MusicXML 4.0, `ending` (start, stop, discontinue).
 */
export function endingsOf(bars: readonly PrintedBar[]): (Ending | null)[] {
  const byBar: (Ending | null)[] = bars.map(() => null);
  for (const group of sideBySide(bracketsOf(bars))) {
    const groupNumbers = new Set(group.flatMap((bracket) => bracket.numbers));
    const lastNumber = Math.max(...groupNumbers);
    group.forEach(({ from, to, numbers }, i) => {
      const ending = {
        from,
        to,
        numbers: new Set(numbers),
        lastNumber,
        lastOfGroup: i === group.length - 1,
        groupNumbers,
      };
      for (let bar = from; bar <= to; bar++) byBar[bar] = ending;
    });
  }
  return byBar;
}

/** Brackets; one that never stops ends with its repeat sign, or with its first bar. */
function bracketsOf(bars: readonly PrintedBar[]): Bracket[] {
  const brackets: Bracket[] = [];
  let open: Bracket | null = null;
  bars.forEach((bar, i) => {
    if (bar.endingStart !== null) {
      open = { from: i, to: i, numbers: bar.endingStart };
      brackets.push(open);
    }
    if (open !== null && (bar.endingStop || bar.backwardRepeatTimes > 0)) {
      open.to = i;
      open = null;
    }
  });
  return brackets;
}

function sideBySide(brackets: readonly Bracket[]): Bracket[][] {
  const groups: Bracket[][] = [];
  for (const bracket of brackets) {
    const group = groups.at(-1);
    if (group !== undefined && group.at(-1)?.to === bracket.from - 1) group.push(bracket);
    else groups.push([bracket]);
  }
  return groups;
}
