import type { ReviewSummary } from '../batch/index.js';
import { resultLine } from './result-line.js';
import { sayLine } from './say-line.js';
import type { Streams } from './streams.js';
import { remarksInWords, WORDS } from './words.js';

/**
 * Prints how every take ended, one line a take, and what else there is to know.
 *
 * @param summary the run
 * @param streams where results and messages go
 */
export function printSummary(summary: ReviewSummary, streams: Streams): void {
  for (const end of summary.ends) streams.stdout.write(`${resultLine(end)}\n`);
  const told = summary.ends.filter((end) => 'failure' in end).length;
  for (const failure of summary.failures.slice(told)) sayLine(streams.stderr, WORDS.failure(failure));
  for (const line of remarksInWords(summary.remarks)) sayLine(streams.stderr, line);
}
