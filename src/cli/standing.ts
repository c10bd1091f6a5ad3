import { runStanding, type StandingRequest } from '../batch/index.js';
import { sayLine } from './say-line.js';
import type { Streams } from './streams.js';
import { WORDS } from './words.js';

/**
 * The command `standing`.
 *
 * @param request the folder with results, chairs, marks of the panel, and how to write
 * @param streams where results and messages go
 * @returns the exit status: 1 when the panel has marks for takes that are not there
 * @throws InputError when the request is wrong
 */
export async function standing(request: StandingRequest, streams: Streams): Promise<number> {
  const { files, unknown } = await runStanding(request);
  if (unknown.length > 0) sayLine(streams.stderr, WORDS.marksUnknown(unknown));
  for (const file of files) sayLine(streams.stdout, file);
  return unknown.length > 0 ? 1 : 0;
}
