import type { TakeLimits } from './limits.js';

/** One thing for a worker to do. */
export interface PoolTask<Work> {
  /** sent to the worker */
  readonly work: Work;
  readonly limits: TakeLimits;
}

/** Why a task came to nothing. */
export type LossCode = 'took-too-long' | 'too-much-memory' | 'worker-died';

/** How a task ended: with the worker's answer, or with the loss of the worker. */
export type PoolEnd<Answer> = { readonly answer: Answer } | { readonly loss: LossCode };

/**
 * What a worker may say. The worker listens for its task and says `done` once for each. While it is `waiting` for others,
 * who have bounds of their own, no time goes by for its task, until it is `working` again.
 */
export type WorkerMessage<Answer> =
  | { readonly kind: 'more-time'; readonly seconds: number }
  | { readonly kind: 'waiting' }
  | { readonly kind: 'working' }
  | { readonly kind: 'done'; readonly answer: Answer };
