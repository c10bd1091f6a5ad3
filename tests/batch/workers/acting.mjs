// A worker that does what its task says, to see what becomes of a pool in which workers are lost.
import { parentPort } from 'node:worker_threads';

const kept = [];

const ACTS = {
  answer: () => {},
  hang: () => {
    for (;;);
  },
  'hang-after-more-time': () => {
    parentPort.postMessage({ kind: 'more-time', seconds: 0.2 });
    for (;;);
  },
  'work-within-more-time': () => {
    parentPort.postMessage({ kind: 'more-time', seconds: 300 });
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 6000);
  },
  throw: () => {
    throw new Error('a fault');
  },
  reject: () => void Promise.reject(new Error('a fault nobody waits for')),
  exit: () => process.exit(0),
  'grow-heap': () => {
    for (;;) kept.push(Array.from({ length: 1000 }, (_, i) => ({ i })));
  },
  'grow-buffers': () => {
    for (;;) {
      kept.push(new Uint8Array(2 ** 24).fill(1));
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20);
    }
  },
};

parentPort.on('message', ({ act, value }) => {
  ACTS[act]();
  setImmediate(() => parentPort.postMessage({ kind: 'done', answer: value }));
});
