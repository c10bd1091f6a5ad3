import type { Engrave, Excerpt } from './engrave-excerpt.js';

/** One line of engraved bars, and which printed bars it holds, counted from 0. */
export interface LineOfBars {
  readonly excerpt: Excerpt;
  readonly from: number;
  readonly to: number;
}

/**
 * Engraves bars line by line, each line an excerpt by itself, so that what is drawn beside a line never stands at another.
 *
 * @param engrave engraves bars of the part
 * @param from 0-based position of the first printed bar
 * @param to 0-based position of the last printed bar
 * @param width points a line may take
 * @returns lines from top to bottom; none when the bars cannot be engraved
 */
export function engraveLines(engrave: Engrave, from: number, to: number, width: number): LineOfBars[] {
  const whole = engrave(from, to, width);
  if (whole === null) return [];
  if (whole.barsOfSystems.length === 1) return [{ excerpt: whole, from, to }];
  const lines: LineOfBars[] = [];
  let first = from;
  for (const bars of whole.barsOfSystems) {
    const excerpt = engrave(first, first + bars - 1, width);
    if (excerpt === null) return [];
    lines.push({ excerpt, from: first, to: first + bars - 1 });
    first += bars;
  }
  return lines;
}
