import { expect, test } from 'vitest';
import { readPart } from '../../src/score/index.js';
import { attributes, dynamic, note, scoreOf } from './score-of.js';

const eighths = [...'CDEFGABC']
  .map((letter) => note(`${letter}4`, 12, { type: 'eighth', notations: '<articulations><staccato/></articulations>' }))
  .join('');
const partOf = (bars: number): Uint8Array =>
  scoreOf(
    Array.from(
      { length: bars },
      (_, i) => (i === 0 ? attributes(24, -1) : '') + dynamic(i % 2 === 0 ? 'p' : 'f') + eighths,
    ),
  );

/** Best of several runs, in milliseconds: what the work takes when nothing else is going on. */
function milliseconds(bytes: Uint8Array, runs: number): number {
  let best = Number.POSITIVE_INFINITY;
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    readPart(bytes);
    best = Math.min(best, performance.now() - start);
  }
  return best;
}

// Aim: 500 bars in 200 ms on a quiet machine; the limits leave room for a busy one.
test('500 bars are read at once, and time grows with length', { timeout: 60_000 }, () => {
  const short = milliseconds(partOf(500), 5);
  const long = milliseconds(partOf(2000), 3);
  expect(short).toBeLessThan(500);
  expect(long / short).toBeLessThan(8);
});
