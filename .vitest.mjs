import { defineConfig } from 'vitest/config';

/** Only what hangs comes to this: the slowest test takes a minute, and a busy machine is given ten times that. */
const LIMIT_MS = 600_000;
/** These measure the memory of the process they run in, so they share it with no other. */
const ALONE = ['tests/batch/pool.test.ts', 'tests/score/attacks.test.ts', 'tests/score/untrusted.test.ts'];

const limits = {
  testTimeout: LIMIT_MS * Math.max(1, Number(process.env.FUZZ_TIMES ?? 1)),
  hookTimeout: LIMIT_MS,
};

export default defineConfig({
  test: {
    globalSetup: ['./.loops.mjs', './.room-script.mjs'],
    projects: [
      // Files share what they load: the engines are compiled once a worker, and no test leaves anything behind.
      { test: { name: 'together', isolate: false, include: ['tests/**/*.test.ts'], exclude: ALONE, ...limits } },
      { test: { name: 'alone', include: ALONE, ...limits } },
    ],
  },
});
