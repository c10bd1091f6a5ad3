import { parentPort, workerData } from 'node:worker_threads';
import type { WorkerMessage } from './pool/types.js';
import type { TakeAnswer, TakeWork } from './review-in-worker.js';
import { reviewInWorker, type SharedWork } from './review-in-worker.js';

const port = parentPort;
if (port === null) throw new Error('this file is started as a worker');
const say = (message: WorkerMessage<TakeAnswer>): void => port.postMessage(message);

port.on('message', (work: TakeWork) => {
  const onSeconds = (seconds: number): void => say({ kind: 'more-time', seconds });
  void reviewInWorker(work, workerData as SharedWork, onSeconds).then((answer) => say({ kind: 'done', answer }));
});
