import { workerData } from 'node:worker_threads';
import { reviewFile, type SharedWork } from './review-file.js';
import type { NamedTake, TakeEnd } from './types.js';

/**
 * What a worker of the pool does with each take sent to it. What all takes share came once, when the worker began.
 *
 * @param take which file, and the name to write under
 * @returns the result, or the failure
 *
 * Source: definition.
 */
export default function reviewInWorker(take: NamedTake): Promise<TakeEnd> {
  return reviewFile(take, workerData as SharedWork);
}
