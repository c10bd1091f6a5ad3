/**
 * @param bar printed number of the first bar
 * @param toBar printed number of the last bar
 * @returns `Bar 4`, `Bars 4–6`
 *
 * Source: definition.
 */
export function barsInWords(bar: string, toBar: string): string {
  return bar === toBar ? `Bar ${bar}` : `Bars ${bar}–${toBar}`;
}

/**
 * @param bars printed numbers in order
 * @returns `Bar 4`, `Bars 1, 3 and 14`, runs of neighbours as `2–5`
 *
 * Source: definition.
 */
export function barList(bars: readonly string[]): string {
  const runs: string[][] = [];
  for (const bar of bars) {
    const last = runs.at(-1);
    if (last !== undefined && Number(bar) === Number(last.at(-1)) + 1) last.push(bar);
    else runs.push([bar]);
  }
  const words = runs.flatMap((run) => (run.length > 2 ? [`${run[0]}–${run.at(-1)}`] : run));
  const last = words.at(-1) ?? '';
  const said = words.length === 1 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
  return `${bars.length === 1 ? 'Bar' : 'Bars'} ${said}`;
}

const FRACTIONS: readonly (readonly [number, string])[] = [
  [1 / 4, '¼'],
  [1 / 3, '⅓'],
  [1 / 2, '½'],
  [2 / 3, '⅔'],
  [3 / 4, '¾'],
];

/**
 * @param bar printed number
 * @param beat 1-based, fractional
 * @returns `Bar 4, beat 2½`
 *
 * Source: definition.
 */
export function noteInWords(bar: string, beat: number): string {
  const whole = Math.floor(beat + 0.02);
  const near = FRACTIONS.find(([value]) => Math.abs(beat - whole - value) < 0.02);
  const exact = Math.abs(beat - whole) < 0.02;
  return `Bar ${bar}, beat ${exact ? whole : near === undefined ? `${whole} and a bit` : `${whole}${near[1]}`}`;
}
