import { Worker } from 'node:worker_threads';
import type { TakeLimits } from './limits.js';
import type { LossCode, PoolEnd, PoolTask, WorkerMessage } from './types.js';

/** What every worker of a pool is. */
export interface WorkerKind {
  /** its file */
  readonly file: URL;
  readonly workerData: unknown;
  /** what is ready only later; each worker is sent `{ later: … }` once it is */
  readonly later?: Promise<unknown>;
}

/**
 * One worker at a time, that does one task at a time. A worker that is lost, or was started for smaller takes, is replaced
 * by a fresh one; whatever it was doing ends with a loss, never with silence.
 *
 * Node:worker_threads for how a worker ends.
 */
export class Lane<Work, Answer> {
  readonly #kind: WorkerKind;
  #worker: Worker | null = null;
  #heapMb = 0;
  #lose: ((loss: LossCode) => void) | null = null;
  #totalMb = 0;
  #ended = false;

  /** @param kind what every worker of the pool is */
  constructor(kind: WorkerKind) {
    this.#kind = kind;
  }

  /** @returns memory the task at work may use, in MB; null when there is none */
  get busyMb(): number | null {
    return this.#lose === null ? null : this.#totalMb;
  }

  /**
   * @param task what to do
   * @returns how it ended
   */
  async run(task: PoolTask<Work>): Promise<PoolEnd<Answer>> {
    const worker = await this.#workerFor(task.limits.heapMb);
    if (this.#ended) await this.#close();
    if (this.#ended) return { loss: 'worker-died' };
    this.#totalMb = task.limits.totalMb;
    const end = await this.#outcome(worker, task);
    this.#lose = null;
    if ('loss' in end) await this.#close();
    return end;
  }

  /**
   * Asks the worker that is up, which has what it needs at hand by now; none is started.
   *
   * @param work what to do
   * @param limits how long it may take, and how much memory the task may use
   * @returns its answer; null when no worker is up, or it was lost
   */
  async ask(work: Work, limits: Omit<TakeLimits, 'heapMb'>): Promise<Answer | null> {
    if (this.#worker === null) return null;
    const end = await this.run({ work, limits: { ...limits, heapMb: this.#heapMb } });
    return 'answer' in end ? end.answer : null;
  }

  /**
   * Ends the task at work with a loss.
   *
   * @param loss why
   */
  lose(loss: LossCode): void {
    this.#lose?.(loss);
  }

  /** Ends the lane for good; what its worker was doing is lost. */
  async close(): Promise<void> {
    this.#ended = true;
    await this.#close();
  }

  async #close(): Promise<void> {
    const worker = this.#worker;
    this.#worker = null;
    this.lose('worker-died');
    await worker?.terminate();
  }

  async #workerFor(heapMb: number): Promise<Worker> {
    if (this.#worker !== null && this.#heapMb === heapMb) return this.#worker;
    await this.#close();
    const { file, workerData } = this.#kind;
    const worker = new Worker(file, { workerData, resourceLimits: { maxOldGenerationSizeMb: heapMb } });
    // One listener for the worker's whole life: a fault between two tasks must not become a fault of this process.
    worker.on('error', (error) => this.#died(worker, lossCodeOf(error)));
    worker.on('exit', () => this.#died(worker, 'worker-died'));
    this.#worker = worker;
    this.#heapMb = heapMb;
    void this.#kind.later?.then((later) => {
      if (this.#worker === worker) worker.postMessage({ later });
    });
    return worker;
  }

  #died(worker: Worker, loss: LossCode): void {
    if (this.#worker !== worker) return;
    this.#worker = null;
    this.lose(loss);
  }

  #outcome(worker: Worker, { work, limits }: PoolTask<Work>): Promise<PoolEnd<Answer>> {
    return new Promise((resolve) => {
      let began = performance.now();
      let allowed = limits.firstSeconds;
      let waitingSince = began;
      let timer: NodeJS.Timeout;
      const end = (how: PoolEnd<Answer>): void => {
        clearTimeout(timer);
        worker.off('message', onMessage);
        resolve(how);
      };
      const allow = (seconds: number): void => {
        clearTimeout(timer);
        allowed = seconds;
        const left = Math.max(0, seconds * 1000 - (performance.now() - began));
        timer = setTimeout(() => end({ loss: 'took-too-long' }), Math.min(left, LONGEST_TIMER_MS));
      };
      const onMessage = (message: WorkerMessage<Answer>): void => {
        if (message.kind === 'done') end({ answer: message.answer });
        else if (message.kind === 'more-time') allow(message.seconds);
        else if (message.kind === 'waiting') {
          clearTimeout(timer);
          waitingSince = performance.now();
        } else {
          began += performance.now() - waitingSince;
          allow(allowed);
        }
      };
      this.#lose = (loss) => end({ loss });
      worker.on('message', onMessage);
      allow(limits.firstSeconds);
      worker.postMessage(work);
    });
  }
}

/** A timer holds 31 bits of milliseconds. Source: the documentation of setTimeout in Node.js. */
const LONGEST_TIMER_MS = 2 ** 31 - 1;

function lossCodeOf(error: unknown): LossCode {
  const code = error instanceof Error && 'code' in error ? error.code : '';
  return code === 'ERR_WORKER_OUT_OF_MEMORY' ? 'too-much-memory' : 'worker-died';
}
