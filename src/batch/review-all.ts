import type { Piscina } from 'piscina';
import { failureOf } from './failure-of.js';
import type { SharedWork } from './review-file.js';
import type { NamedTake, TakeEnd } from './types.js';

/** Told each take's end as it comes. */
type OnEnd = (end: TakeEnd) => void;

/**
 * Reviews all takes, several at a time. A single take, or one job, runs in this process, which saves starting a worker.
 *
 * @param takes what to review
 * @param work what all takes share
 * @param jobs how many takes to work on at the same time, 1 or more
 * @param onEnd told after each take, in the order in which they end
 * @returns the ends, in the order of `takes`
 *
 * Source: definition.
 */
export async function reviewAll(
  takes: readonly NamedTake[],
  work: SharedWork,
  jobs: number,
  onEnd: OnEnd,
): Promise<TakeEnd[]> {
  const threads = Math.min(jobs, takes.length);
  return threads > 1 ? reviewInWorkers(takes, work, threads, onEnd) : reviewHere(takes, work, onEnd);
}

async function reviewHere(takes: readonly NamedTake[], work: SharedWork, onEnd: OnEnd): Promise<TakeEnd[]> {
  const { reviewFile } = await import('./review-file.js');
  const ends: TakeEnd[] = [];
  for (const take of takes) {
    const end = await reviewFile(take, work);
    onEnd(end);
    ends.push(end);
  }
  return ends;
}

async function reviewInWorkers(
  takes: readonly NamedTake[],
  work: SharedWork,
  threads: number,
  onEnd: OnEnd,
): Promise<TakeEnd[]> {
  const { Piscina } = await import('piscina');
  const filename = new URL('./worker.js', import.meta.url).href;
  const pool = new Piscina({ filename, minThreads: threads, maxThreads: threads, workerData: work });
  const reviewed = async (take: NamedTake): Promise<TakeEnd> => {
    const end = await inPool(pool, take);
    onEnd(end);
    return end;
  };
  try {
    return await Promise.all(takes.map(reviewed));
  } finally {
    await pool.destroy();
  }
}

async function inPool(pool: Piscina, take: NamedTake): Promise<TakeEnd> {
  try {
    return await pool.run(take);
  } catch (error) {
    return { name: take.name, failure: failureOf(take.file, error) };
  }
}
