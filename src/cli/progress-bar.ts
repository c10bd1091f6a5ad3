import cliProgress from 'cli-progress';
import type { ReviewProgress } from '../batch/index.js';
import type { Streams } from './streams.js';
import { WORDS } from './words.js';

/** What shows how far a run has come. */
export interface Progress {
  /** called after each take */
  readonly tell: (progress: ReviewProgress) => void;
  /** called at the end, so that the line after begins on a line of its own */
  readonly end: () => void;
}

/**
 * Shows how far the review has come: on a terminal as a bar with the time left, elsewhere in a plain line a take. A take
 * that failed always leaves a line.
 *
 * @param stderr where to show it
 * @returns what to call after each take, and at the end
 */
export function progressTo(stderr: Streams['stderr']): Progress {
  return stderr.isTTY === true ? barOn(stderr as NodeJS.WriteStream) : linesOn(stderr);
}

function linesOn(stderr: Streams['stderr']): Progress {
  return {
    tell: ({ done, total, end }) => stderr.write(`${done}/${total} ${WORDS.took(end)}\n`),
    end: () => {},
  };
}

function barOn(stream: NodeJS.WriteStream): Progress {
  const options = { stream, format: WORDS.bar, etaBuffer: 20, clearOnComplete: true, hideCursor: null };
  const bars = new cliProgress.MultiBar(options, cliProgress.Presets.shades_grey);
  let bar: cliProgress.SingleBar | null = null;
  let listened = 0;
  const began = performance.now();
  return {
    tell: ({ done, total, end }) => {
      if ('failure' in end || !end.kept) listened += 1;
      const seconds = (performance.now() - began) / 1000;
      const left = WORDS.timeLeft(listened === 0 ? Number.NaN : (seconds / listened) * (total - done));
      if (bar === null) bar = bars.create(total, done, { left });
      else bar.update(done, { left });
      if ('failure' in end) bars.log(`${done}/${total} ${WORDS.took(end)}\n`);
    },
    end: () => bars.stop(),
  };
}
