import { runStudy, type StudyRequest } from '../batch/index.js';
import type { Streams } from './streams.js';
import { WORDS } from './words.js';

/**
 * The command `study`.
 *
 * @param request the score, the brief, where to write and how
 * @param streams where results and messages go
 * @returns the exit status
 * @throws InputError when the request is wrong
 */
export async function study(request: StudyRequest, streams: Streams): Promise<number> {
  const { sheetPath, brief, notEngraved } = await runStudy(request);
  if (brief === 'starter-written') {
    streams.stderr.write(`${request.briefPath} was not there; wrote a starter brief to change and used what it says\n`);
  }
  if (brief === 'read') streams.stderr.write(`used the brief ${request.briefPath}\n`);
  if (notEngraved.length > 0) streams.stderr.write(`${WORDS.notEngraved(notEngraved)}\n`);
  streams.stdout.write(`${sheetPath}\n`);
  return 0;
}
