import type { PrintedBar } from './types.js';

/**
 * Decides what a coda sign without words means: the first of two is where the player leaves, the second where the coda
 * begins; a single one is whichever of the two is not yet known.
 *
 * @param bars bars in printed order, `codaSymbol` true where such a sign stands
 * @returns the bars with `toCoda` and `coda` filled in
 *
 * Source: common practice.
 */
export function resolveCodas(bars: readonly (PrintedBar & { readonly codaSymbol: boolean })[]): PrintedBar[] {
  let leaveKnown = bars.some((bar) => bar.toCoda !== null);
  return bars.map(({ codaSymbol, ...bar }) => {
    if (!codaSymbol || bar.coda !== null || bar.toCoda !== null) return bar;
    const landing = leaveKnown;
    leaveKnown = true;
    return landing ? { ...bar, coda: 'coda' } : { ...bar, toCoda: 'coda' };
  });
}
