import { type ProgressRequest, runProgress } from '../batch/index.js';
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
  for (const failure of failures) streams.stderr.write(`${WORDS.failure(failure)}\n`);
  if (blindApart.length > 0) streams.stderr.write(`${WORDS.blindApart(blindApart)}\n`);
  if (notFollowed.length > 0) streams.stderr.write(`${WORDS.notFollowed(notFollowed)}\n`);
  if (tooManyForPages !== null) streams.stderr.write(`${WORDS.tooManyForPages(tooManyForPages)}\n`);
  streams.stdout.write(`${sheetPath}\n`);
  return failures.length > 0 || tooManyForPages !== null ? 1 : 0;
}
