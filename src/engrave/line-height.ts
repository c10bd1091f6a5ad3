import type { PathItem } from '../page/index.js';

/**
 * @param line a staff line
 * @returns the height at which it begins, points
 *
 * Source: SVG 2, path data.
 */
export function lineHeight({ d }: PathItem): number {
  return Number(/^M[-\d.]+ ([-\d.]+)/.exec(d)?.[1] ?? 0);
}
