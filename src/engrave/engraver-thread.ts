import { setFlagsFromString } from 'node:v8';
import { parentPort, workerData } from 'node:worker_threads';
import { boundMemory } from './bound-memory.js';
import type { EngraverMessage } from './engrave-in-thread.js';
import { engravePart } from './engrave-part.js';

/** Megabytes the engraving program may use; a part of two thousand bars needs a tenth of it. */
const MOST_MEGABYTES = 512;

// The engraving program runs once and for less than a second: compiling it a second time, to run faster, takes longer.
setFlagsFromString('--wasm-tiering-budget=1000000000');
// Much of it is never called: it is looked through where it is compiled, not before.
setFlagsFromString('--wasm-lazy-validation');
boundMemory(MOST_MEGABYTES);

for (const musicXml of workerData as readonly (string | null)[]) {
  const message: EngraverMessage = musicXml === null ? null : await engravePart(musicXml);
  parentPort?.postMessage(message);
}
