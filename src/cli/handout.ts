import { type HandoutRequest, runHandout } from '../batch/index.js';
import { sayLine } from './say-line.js';
import type { Streams } from './streams.js';
import { WORDS } from './words.js';

/**
 * The command `handout`.
 *
 * @param request which results, where to write, which takes
 * @param streams where results and messages go
 * @returns the exit status: 1 when some take is missing from what is handed out
 * @throws InputError when the request is wrong
 */
export async function handout(request: HandoutRequest, streams: Streams): Promise<number> {
  const { indexPath, printPath, mailPath, failures } = await runHandout(request);
  for (const failure of failures) sayLine(streams.stderr, WORDS.failure(failure));
  for (const path of [indexPath, printPath, mailPath]) sayLine(streams.stdout, path);
  return failures.length > 0 ? 1 : 0;
}
