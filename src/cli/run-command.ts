import { InputError } from '../base/index.js';
import { readArguments } from './read-arguments.js';
import { sayLine } from './say-line.js';
import type { Streams } from './streams.js';

/**
 * Runs one command.
 *
 * @param words the command line without program and script
 * @param streams where results and messages go
 * @returns the exit status: 0 done, 1 something could not be reviewed, 2 the request itself is wrong
 */
export async function runCommand(words: readonly string[], streams: Streams = process): Promise<number> {
  try {
    return await readArguments(words, streams);
  } catch (error) {
    const { WORDS } = await import('./words.js');
    sayLine(streams.stderr, `takesheet: ${WORDS.thrown(error)}`);
    return error instanceof InputError ? 2 : 1;
  }
}
