import { runStudy, type StudyRequest } from '../batch/index.js';
import { sayLine } from './say-line.js';
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
    sayLine(
      streams.stderr,
      `${request.briefPath} was not there; wrote a starter brief to change and used what it says`,
    );
  }
  if (brief === 'read') sayLine(streams.stderr, `used the brief ${request.briefPath}`);
  if (notEngraved.length > 0) sayLine(streams.stderr, WORDS.notEngraved(notEngraved));
  sayLine(streams.stdout, sheetPath);
  return 0;
}
