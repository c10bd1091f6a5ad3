import { type ProgressRequest, runProgress } from '../batch/index.js';
import { sayLine } from './say-line.js';
import type { Streams } from './streams.js';
import { WORDS } from './words.js';

/**
 * The command `progress`.
 *
 * @param request which results, where to write and how
 * @param streams where results and messages go
 * @returns the exit status: 1 when some result could not be read, or when there are too many players for pages
 * @throws InputError when the request is wrong
 */
export async function progress(request: ProgressRequest, streams: Streams): Promise<number> {
  const { sheetPath, failures, blindApart, notFollowed, tooManyForPages } = await runProgress(request);
  for (const failure of failures) sayLine(streams.stderr, WORDS.failure(failure));
  if (blindApart.length > 0) sayLine(streams.stderr, WORDS.blindApart(blindApart));
  if (notFollowed.length > 0) sayLine(streams.stderr, WORDS.notFollowed(notFollowed));
  if (tooManyForPages !== null) sayLine(streams.stderr, WORDS.tooManyForPages(tooManyForPages));
  sayLine(streams.stdout, sheetPath);
  return failures.length > 0 || tooManyForPages !== null ? 1 : 0;
}
