import { setFlagsFromString } from 'node:v8';
import { parentPort, workerData } from 'node:worker_threads';
import { type EngravedPart, engravePart } from './engrave-part.js';

// The engraving program runs once and for less than a second: compiling it a second time, to run faster, takes longer.
setFlagsFromString('--wasm-tiering-budget=1000000000');

const parts: (EngravedPart | null)[] = [];
for (const musicXml of workerData as readonly (string | null)[])
  parts.push(musicXml === null ? null : await engravePart(musicXml));
parentPort?.postMessage(parts);
