import { runStanding, type StandingRequest } from '../batch/index.js';
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
  if (unknown.length > 0) streams.stderr.write(`${WORDS.marksUnknown(unknown)}\n`);
  for (const file of files) streams.stdout.write(`${file}\n`);
  return unknown.length > 0 ? 1 : 0;
}
