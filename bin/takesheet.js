#!/usr/bin/env node
import { existsSync } from 'node:fs';
import { setFlagsFromString } from 'node:v8';

// Recordings are large and short-lived, so memory is looked through often; done by threads beside the workers this takes a
// fifth of the processors' time and gains nothing.
setFlagsFromString('--no-concurrent-marking');
// It is looked through when it has doubled, not when it has grown by half: little of a take is kept, and this leaves out a tenth of
// the processors' time for some twenty megabytes.
setFlagsFromString('--heap-growing-percent=100');
// Every worker compiles for itself what runs often, on threads beside it. Waiting until it has run seven times as long leaves
// out what would not have paid, and with that a sixth of the processors' time of two workers on 100 takes.
setFlagsFromString('--interrupt-budget=500000');

const entry = new URL('../dist/program/cli.js', import.meta.url);
let outLost = false;

// A reader of the pipe may leave early; that is no fault. What else keeps results from being written is told.
process.stdout.on('error', (error) => {
  if (error.code === 'EPIPE' || outLost) return;
  outLost = true;
  process.stderr.write(`takesheet: standard output cannot be written to (${error.code})\n`);
  process.exitCode = 1;
});
// Where messages cannot be written, the work is done all the same.
process.stderr.on('error', () => {});

if (existsSync(entry)) {
  try {
    const { runCommand } = await import(entry.href);
    const status = await runCommand(process.argv.slice(2));
    process.exitCode = outLost ? 1 : status;
  } catch (error) {
    const said = error instanceof Error && 'code' in error ? error.code : String(error);
    process.stderr.write(`takesheet: the program cannot run here (${said}); it may be allowed too few open files\n`);
    process.exitCode = 1;
  }
} else {
  process.stderr.write('takesheet: the program is not built yet; run npm install in its folder\n');
  process.exitCode = 2;
}
