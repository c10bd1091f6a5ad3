/** More than these fill a column from top to bottom. */
const MOST_RUNS = 12;

/**
 * @param bars printed numbers in order
 * @returns the numbers, three or more neighbours as one: `2–5`; and how many bars are left out when there are very many
 */
export function barRuns(bars: readonly string[]): { readonly runs: string[]; readonly leftOut: number } {
  const runs: string[][] = [];
  for (const bar of bars) {
    const last = runs.at(-1);
    if (last !== undefined && Number(bar) === Number(last.at(-1)) + 1) last.push(bar);
    else runs.push([bar]);
  }
  const shown = runs.length > MOST_RUNS + 2 ? runs.slice(0, MOST_RUNS) : runs;
  return {
    runs: shown.flatMap((run) => (run.length > 2 ? [`${run[0]}–${run.at(-1)}`] : run)),
    leftOut: bars.length - shown.flat().length,
  };
}
