import { parentPort, workerData } from 'node:worker_threads';
import type { EngravedPart } from '../engrave/index.js';
import type { Engraving } from '../review/index.js';
import type { WorkerMessage } from './pool/types.js';
import { drawInWorker } from './results/draw-in-worker.js';
import {
  reviewInWorker,
  type SharedWork,
  type SheetWork,
  type TakeWork,
  type WorkerAnswer,
} from './results/review-in-worker.js';

type Parts = readonly (EngravedPart | null)[];

const port = parentPort;
if (port === null) throw new Error('this file is started as a worker');
const say = (message: WorkerMessage<WorkerAnswer>): void => port.postMessage(message);
const shared = workerData as SharedWork;
let lay: (parts: Parts) => void = () => {};
const engraved = new Promise<Parts>((resolve) => {
  lay = resolve;
});
/** Pieces are laid out elsewhere, once for all workers; what that takes is not the take's own time. */
const engrave: Engraving = async ({ musicXml = null }) => {
  if (musicXml === null) return null;
  say({ kind: 'waiting' });
  const parts = await engraved;
  say({ kind: 'working' });
  return parts[shared.etudes.findIndex((etude) => etude.musicXml === musicXml)] ?? null;
};

port.on('message', (order: TakeWork | SheetWork | { readonly later: Parts }) => {
  if ('later' in order) {
    lay(order.later);
    return;
  }
  if ('sheet' in order) {
    void drawInWorker(order).then((answer) => say({ kind: 'done', answer }));
    return;
  }
  const onSeconds = (seconds: number): void => say({ kind: 'more-time', seconds });
  void reviewInWorker(order, shared, onSeconds, engrave).then((answer) => say({ kind: 'done', answer }));
});
