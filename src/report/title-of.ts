import type { TakeResult } from '../result/index.js';

/**
 * @param result the take
 * @returns the étude's title, or the score's file name when it has none
 */
export function titleOf(result: TakeResult): string {
  return result.score.title.trim() === '' ? result.score.file : result.score.title;
}
