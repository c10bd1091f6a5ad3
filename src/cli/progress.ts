import { type ProgressRequest, runProgress } from '../batch/index.js';
import { sayLine } from './say-line.js';
import type { Streams } from './streams.js';
import { WORDS } from './words.js';

/**
 * The command `progress`.
 *
 * @param request which results, where to write and how
 * @param streams where results and messages go
 * @returns the exit status: 1 when some result could not be read
 * @throws InputError when the request is wrong
 */
export async function progress(request: ProgressRequest, streams: Streams): Promise<number> {
  const { sheetPaths, failures, blindApart, notFollowed } = await runProgress(request);
  for (const failure of failures) sayLine(streams.stderr, WORDS.failure(failure));
  if (blindApart.length > 0) sayLine(streams.stderr, WORDS.blindApart(blindApart));
  if (notFollowed.length > 0) sayLine(streams.stderr, WORDS.notFollowed(notFollowed));
  for (const path of sheetPaths) sayLine(streams.stdout, path);
  return failures.length > 0 ? 1 : 0;
}
