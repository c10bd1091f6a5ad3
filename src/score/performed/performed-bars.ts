import type { PrintedBar } from '../printed/types.js';
import type { PerformedBar } from '../types.js';
import type { RouteStep } from './route.js';

/** A performed bar with the printed bar it comes from. */
export interface PlayedBar {
  readonly performed: PerformedBar;
  readonly printed: PrintedBar;
  /** the bar before it in performed order is not the one before it in print */
  readonly jumped: boolean;
}

/**
 * @param bars bars as printed
 * @param steps performed order
 * @returns the bars on the performed timeline, with the count of times each was reached
 */
export function performedBars(bars: readonly PrintedBar[], steps: readonly RouteStep[]): PlayedBar[] {
  const passes = new Uint32Array(bars.length);
  let startQuarters = 0;
  return steps.map(({ barIndex, jumped }) => {
    const printed = bars[barIndex] as PrintedBar;
    const pass = (passes[barIndex] as number) + 1;
    passes[barIndex] = pass;
    const { number: bar, lengthQuarters, beats, beatType } = printed;
    const performed = { bar, barIndex, pass, startQuarters, lengthQuarters, beats, beatType };
    startQuarters += lengthQuarters;
    return { performed, printed, jumped };
  });
}
