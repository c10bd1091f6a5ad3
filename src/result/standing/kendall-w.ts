/**
 * Ranks from 1 for the largest; equal values share the mean of their ranks.
 *
 * @param values any numbers
 * @returns one rank a value, in the same order
 */
export function ranksOf(values: readonly number[]): number[] {
  return values.map((value) => {
    const above = values.filter((other) => other > value).length;
    const equal = values.filter((other) => other === value).length;
    return above + (equal + 1) / 2;
  });
}

/**
 * How far judges agree in the order of takes: Kendall's coefficient of concordance, corrected for ties.
 *
 * @param marks one list a judge, of one mark a take, all of the same length
 * @returns 0 (no agreement) to 1 (the same order); null with fewer than two judges or takes, or when no judge tells takes apart
 *
 * Source: Kendall & Babington Smith 1939; the correction as in Siegel & Castellan 1988, Nonparametric Statistics, 9.5.
 */
export function kendallW(marks: readonly (readonly number[])[]): number | null {
  const [m, n] = [marks.length, marks[0]?.length ?? 0];
  if (m < 2 || n < 2) return null;
  const ranks = marks.map(ranksOf);
  const sums = Array.from({ length: n }, (_, i) => ranks.reduce((sum, one) => sum + (one[i] as number), 0));
  const squares = sums.reduce((sum, one) => sum + one * one, 0);
  const ties = marks.reduce((sum, one) => sum + tiesIn(one), 0);
  const most = m * m * n * (n * n - 1) - m * ties;
  return most === 0 ? null : (12 * squares - 3 * m * m * n * (n + 1) ** 2) / most;
}

/** Sum of t³ − t over groups of t equal marks. */
function tiesIn(marks: readonly number[]): number {
  return [...new Set(marks)].reduce((sum, mark) => {
    const t = marks.filter((other) => other === mark).length;
    return sum + t ** 3 - t;
  }, 0);
}
