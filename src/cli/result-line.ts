import { printable } from '../base/index.js';
import type { TakeEnd } from '../batch/index.js';

/**
 * One take in one line for other programs to read: name, outcome, things to fix, things to watch, report, with tabs
 * between them. The last three are empty for a take that failed.
 *
 * @param end how the take ended
 * @returns the line without its line break
 */
export function resultLine(end: TakeEnd): string {
  if ('failure' in end) return [printable(end.name), 'failed', '', '', ''].join('\t');
  const { take, toFix, toWatch } = end.row;
  return [printable(end.name), take.outcome, toFix, toWatch, printable(end.report)].join('\t');
}
