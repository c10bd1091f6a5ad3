import type { ReviewProgress } from '../batch/index.js';
import type { Streams } from './streams.js';

/** Back to the start of the line, and the line wiped (ECMA-48: CR, EL 2). */
const START_LINE_ANEW = '\r\u001b[2K';

/**
 * Shows how far the review has come: on a terminal in one line that is written anew, elsewhere in a plain line a take.
 * A take that failed always leaves a line.
 *
 * @param stderr where to show it
 * @returns what to call after each take
 *
 * Source: ECMA-48 for the control sequence.
 */
export function progressTo(stderr: Streams['stderr']): (progress: ReviewProgress) => void {
  const terminal = stderr.isTTY === true;
  return ({ done, total, end }) => {
    const failed = 'failure' in end;
    const text = failed ? `${end.failure.file}: ${end.failure.message}` : `${end.name}: ${end.result.outcome}`;
    const line = `${done}/${total} ${text}`;
    const stays = !terminal || failed || done === total;
    stderr.write(`${terminal ? START_LINE_ANEW : ''}${line}${stays ? '\n' : ''}`);
  };
}
