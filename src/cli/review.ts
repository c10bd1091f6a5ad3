import { exitCode, type ReviewRequest, runReview } from '../batch/index.js';
import { progressTo } from './progress.js';
import { resultLine } from './result-line.js';
import type { Streams } from './streams.js';

/**
 * The command `review`.
 *
 * @param request what to review and where to write
 * @param streams where results and messages go
 * @returns the exit status
 * @throws InputError when the request itself is wrong
 *
 * Source: definition.
 */
export async function review(request: ReviewRequest, streams: Streams): Promise<number> {
  const summary = await runReview(request, progressTo(streams.stderr));
  for (const end of summary.ends) streams.stdout.write(`${resultLine(end)}\n`);
  const told = summary.ends.filter((end) => 'failure' in end).length;
  for (const failure of summary.failures.slice(told)) streams.stderr.write(`${failure.file}: ${failure.message}\n`);
  return exitCode(summary);
}
