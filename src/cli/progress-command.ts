import { type ProgressRequest, runProgress } from '../batch/index.js';
import type { Streams } from './streams.js';

/**
 * The command `progress`.
 *
 * @param request which results, where to write and how
 * @param streams where results and messages go
 * @returns the exit status: 1 when some result could not be read
 * @throws InputError when the request is wrong
 *
 * Source: definition.
 */
export async function progressCommand(request: ProgressRequest, streams: Streams): Promise<number> {
  const { sheetPath, failures } = await runProgress(request);
  for (const failure of failures) streams.stderr.write(`${failure.file}: ${failure.message}\n`);
  streams.stdout.write(`${sheetPath}\n`);
  return failures.length > 0 ? 1 : 0;
}
