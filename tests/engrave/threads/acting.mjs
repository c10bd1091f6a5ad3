// A thread that lays nothing out but does what each part says, to see what becomes of the parts beside one at fault.
import { parentPort, workerData } from 'node:worker_threads';

const ACTS = {
  hang: () => {
    for (;;);
  },
  throw: () => {
    throw new Error('a fault');
  },
  exit: () => process.exit(0),
  'grow-heap': () => {
    const kept = [];
    for (;;) kept.push(Array.from({ length: 1000 }, (_, i) => ({ i })));
  },
};

for (const part of workerData) {
  ACTS[part]?.();
  parentPort.postMessage(part);
}
