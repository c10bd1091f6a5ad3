import { defineConfig } from 'vitest/config';

/** Only what hangs comes to this: the slowest test takes a minute, and a busy machine is given ten times that. */
const LIMIT_MS = 600_000;

export default defineConfig({
  test: {
    globalSetup: './.room-script.mjs',
    testTimeout: LIMIT_MS * Math.max(1, Number(process.env.FUZZ_TIMES ?? 1)),
    hookTimeout: LIMIT_MS,
  },
});
