/**
 * @param bars a length in bars, to a quarter of a bar
 * @returns `2`, `1¾`
 */
export function quarterBars(bars: number): string {
  return `${Math.floor(bars)}${['', '¼', '½', '¾'][Math.round((bars % 1) * 4)] ?? ''}`;
}
