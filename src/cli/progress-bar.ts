import type { ReviewProgress } from '../batch/index.js';
import { sayLine } from './say-line.js';
import type { Streams } from './streams.js';
import { type Terminal, TerminalBar } from './terminal-bar.js';
import { WORDS } from './words.js';

/** What shows how far a run has come. */
export interface Progress {
  /** called after each take */
  readonly tell: (progress: ReviewProgress) => void;
  /** a message on a line of its own, whatever is shown */
  readonly say: (message: string) => void;
  /** called at the end, so that the line after begins on a line of its own */
  readonly end: () => void;
}

/**
 * Shows how far the review has come: on a terminal as a bar with the time left, elsewhere in a plain line a take. A take
 * that failed always leaves a line.
 *
 * @param stderr where to show it
 * @returns what to call after each take, for messages, and at the end
 */
export function progressTo(stderr: Streams['stderr']): Progress {
  return stderr.isTTY === true ? barOn(stderr as Terminal) : linesOn(stderr);
}

function linesOn(stderr: Streams['stderr']): Progress {
  return {
    tell: ({ done, total, end }) => sayLine(stderr, `${done}/${total} ${WORDS.took(end)}`),
    say: (message) => sayLine(stderr, message),
    end: () => {},
  };
}

function barOn(terminal: Terminal): Progress {
  const bar = new TerminalBar(terminal);
  const began = performance.now();
  let listened = 0;
  return {
    tell: ({ done, total, end }) => {
      if ('failure' in end) bar.say(`${done}/${total} ${WORDS.took(end)}`);
      // what failed at once, and what was there already, says nothing of how long listening takes
      else if (!end.kept) listened += 1;
      const seconds = (performance.now() - began) / 1000;
      const left = WORDS.timeLeft(listened === 0 ? Number.NaN : (seconds / listened) * (total - done));
      bar.show(done / total, WORDS.bar(done, total, left));
    },
    say: (message) => bar.say(message),
    end: () => bar.end(),
  };
}
