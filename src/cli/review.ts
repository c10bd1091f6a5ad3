import { exitCode, type ReviewRequest, runReview } from '../batch/index.js';
import { printSummary } from './print-summary.js';
import { progressTo } from './progress-bar.js';
import { sayLine } from './say-line.js';
import type { Streams } from './streams.js';
import { WORDS } from './words.js';

const SIGNALS = ['SIGINT', 'SIGTERM'] as const;

/**
 * The command `review`. The first Ctrl-C ends it in good order, the second one at once.
 *
 * @param request what to review and where to write
 * @param streams where results and messages go
 * @returns the exit status
 * @throws InputError when the request itself is wrong
 */
export async function review(request: ReviewRequest, streams: Streams): Promise<number> {
  const stop = new AbortController();
  const onSignal = (): void => {
    if (stop.signal.aborted) process.exit(130);
    stop.abort();
    progress.say(WORDS.stopping);
  };
  const progress = progressTo(streams.stderr);
  for (const signal of SIGNALS) process.on(signal, onSignal);
  try {
    const summary = await runReview(request, {
      onPlanned: (recognition) => sayLine(streams.stderr, WORDS.recognised(recognition)),
      onProgress: progress.tell,
      signal: stop.signal,
    }).finally(progress.end);
    printSummary(summary, streams);
    if (summary.notReached > 0) sayLine(streams.stderr, WORDS.stopped(summary.ends.length, summary.notReached));
    return exitCode(summary);
  } finally {
    for (const signal of SIGNALS) process.off(signal, onSignal);
  }
}
