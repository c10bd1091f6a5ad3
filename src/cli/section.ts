import { exitCode, type FolderRequest, runSection } from '../batch/index.js';
import { printSummary } from './print-summary.js';
import { sayLine } from './say-line.js';
import type { Streams } from './streams.js';
import { WORDS } from './words.js';

/**
 * The command `section`.
 *
 * @param request the folder with results, and what to write
 * @param streams where results and messages go
 * @returns the exit status
 * @throws InputError when the request itself is wrong
 */
export async function section(request: FolderRequest, streams: Streams): Promise<number> {
  const summary = await runSection(request);
  for (const end of summary.ends) if ('failure' in end) sayLine(streams.stderr, WORDS.took(end));
  printSummary(summary, streams);
  return exitCode(summary);
}
