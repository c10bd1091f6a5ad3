import type { BarData } from '../room-data.js';

/** Performed bars from the one to the other, both counted. */
export interface Selection {
  readonly from: number;
  readonly to: number;
}

/**
 * @param bars as performed
 * @param barIndex of a printed bar
 * @returns the places at which it is performed, in order
 */
export function placesOf(bars: readonly BarData[], barIndex: number): number[] {
  return bars.flatMap((bar, place) => (bar[1] === barIndex ? [place] : []));
}

/**
 * A stretch from a performed bar to a printed one, through repeats the shortest way that is played.
 *
 * @param bars as performed
 * @param anchor place of the bar the stretch was begun at
 * @param barIndex of the printed bar it is to reach
 * @returns the stretch; the anchor alone when the bar is never played before or after it
 */
export function reachFrom(bars: readonly BarData[], anchor: number, barIndex: number): Selection {
  const places = placesOf(bars, barIndex);
  const after = places.find((place) => place >= anchor);
  const before = places.findLast((place) => place <= anchor);
  const forward = barIndex >= (bars[anchor]?.[1] ?? 0);
  const reached = (forward ? after : before) ?? after ?? before ?? anchor;
  return { from: Math.min(anchor, reached), to: Math.max(anchor, reached) };
}

/**
 * @param bars as performed
 * @param selection of them
 * @returns the same printed bars at the next time they are played; the first time again after the last
 */
export function nextPass(bars: readonly BarData[], { from, to }: Selection): Selection {
  const places = placesOf(bars, bars[from]?.[1] ?? 0);
  const next = places[(places.indexOf(from) + 1) % places.length] ?? from;
  const last = bars[to]?.[1] ?? 0;
  const end = placesOf(bars, last).find((place) => place >= next);
  return { from: next, to: end ?? next };
}
