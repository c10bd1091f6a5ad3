/** As many weeks in a row are told as a span. */
const A_SPAN = 3;

/**
 * @param missing Mondays of weeks without a take, in order
 * @param all Mondays of all weeks with a take of the étude, in order
 * @returns the missing weeks, those of long rows as first and last
 */
export function weekSpans(missing: readonly string[], all: readonly string[]): (string | readonly [string, string])[] {
  const runs: string[][] = [];
  for (const week of missing) {
    const before = runs.at(-1);
    const follows = before !== undefined && all.indexOf(week) === all.indexOf(before.at(-1) ?? '') + 1;
    if (follows) before.push(week);
    else runs.push([week]);
  }
  return runs.flatMap((run): (string | readonly [string, string])[] => {
    const [first, last] = [run[0], run.at(-1)];
    const isSpan = run.length >= A_SPAN && first !== undefined && last !== undefined;
    return isSpan ? [[first, last]] : run;
  });
}
