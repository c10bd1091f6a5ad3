import type { Part } from '../score/index.js';

/** A place in the part that need not be a note's. */
export interface PlaceInScore {
  readonly bar: string;
  readonly pass: number;
  /** 1-based, in units of the time signature's denominator, fractional */
  readonly beat: number;
}

/**
 * @param part the part
 * @param quarters score time
 * @returns bar, pass and beat at that time
 */
export function placeInScore({ bars }: Part, quarters: number): PlaceInScore {
  const bar = bars.findLast((b) => b.startQuarters <= quarters + 1e-6) ?? bars[0]!;
  return { bar: bar.bar, pass: bar.pass, beat: 1 + ((quarters - bar.startQuarters) * bar.beatType) / 4 };
}
