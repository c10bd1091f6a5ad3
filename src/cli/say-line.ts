import { printable } from '../base/index.js';

/**
 * Writes one line. Names of files and what stands in them may hold line breaks, changes of direction and what a terminal
 * obeys: none of that is written.
 *
 * @param stream where to write
 * @param text the line without its line break
 */
export function sayLine(stream: { write(text: string): unknown }, text: string): void {
  stream.write(`${printable(text)}\n`);
}
