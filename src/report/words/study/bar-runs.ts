/**
 * @param bars printed numbers in order
 * @returns the numbers, three or more neighbours as one: `2–5`
 *
 * Source: definition.
 */
export function barRuns(bars: readonly string[]): string[] {
  const runs: string[][] = [];
  for (const bar of bars) {
    const last = runs.at(-1);
    if (last !== undefined && Number(bar) === Number(last.at(-1)) + 1) last.push(bar);
    else runs.push([bar]);
  }
  return runs.flatMap((run) => (run.length > 2 ? [`${run[0]}–${run.at(-1)}`] : run));
}
