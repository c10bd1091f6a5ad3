import type { Followed } from '../../weeks/index.js';

/**
 * @param followed one measure of one player
 * @returns true when it changed beyond chance on some day, even where it is back by now
 */
export function moved({ sinceFirst, sinceLast, course }: Followed): boolean {
  const changes = [sinceFirst, sinceLast].some((change) => change !== null && change.verdict !== 'none');
  return changes || course === 'to-and-fro';
}
