import { Lane, type WorkerKind } from './lane.js';
import type { PoolEnd, PoolTask } from './types.js';

const LOOK_EVERY_MS = 200;
/** What a worker needs for itself: code, engraver, typefaces. */
const WORKER_MB = 384;
/** What a worker may use for what it is asked afterwards. */
const ASKED_MB = 1024;

/** Asks a worker that is up for something more; null when none is, or it was lost over it. */
export type Ask<Work, Answer> = (work: Work, seconds: number) => Promise<Answer | null>;

/** What a pool is asked to do. */
export interface PoolRequest<Work, Answer> {
  readonly kind: WorkerKind;
  readonly tasks: readonly PoolTask<Work>[];
  /** how many workers, 1 or more */
  readonly lanes: number;
  /** told each task's end as it comes, with its place in `tasks` */
  readonly onEnd: (place: number, end: PoolEnd<Answer>) => void;
  /** called when every task has ended, while workers are still up, with what asks one of them */
  readonly afterwards?: (ask: Ask<Work, Answer>) => Promise<void>;
  /** ends the work: tasks that have not ended are told nothing */
  readonly signal?: AbortSignal | undefined;
}

/**
 * Does tasks in worker threads, several at a time. A task that kills its worker, hangs or needs too much memory loses only
 * itself. The engine bounds each worker's heap; buffers lie outside of it, so the memory of the whole process is watched:
 * when it passes what the tasks at work may use together, they are begun again one at a time, each by itself, and the one
 * at fault is lost.
 *
 * @param request tasks, workers, and whom to tell
 * @returns when every task has ended, or the signal was given
 */
export async function runPool<Work, Answer>(request: PoolRequest<Work, Answer>): Promise<void> {
  const { tasks, signal } = request;
  const alone: number[] = [];
  const places = tasks.map((_, place) => place);
  const lanes = Math.max(1, Math.min(request.lanes, tasks.length));
  const afterwards = async (up: readonly Lane<Work, Answer>[]): Promise<void> => {
    if (signal?.aborted !== true) await request.afterwards?.((work, seconds) => askOne(up, work, seconds));
  };
  const putOff = (place: number): void => void alone.push(place);
  await runLanes(request, places, lanes, putOff, async (up) => (alone.length === 0 ? afterwards(up) : undefined));
  if (alone.length === 0 || signal?.aborted === true) return;
  alone.sort((a, b) => a - b);
  await runLanes(request, alone, 1, () => {}, afterwards);
}

async function askOne<Work, Answer>(
  lanes: readonly Lane<Work, Answer>[],
  work: Work,
  seconds: number,
): Promise<Answer | null> {
  for (const lane of lanes) {
    const answer = await lane.ask(work, { firstSeconds: seconds, totalMb: ASKED_MB });
    if (answer !== null) return answer;
  }
  return null;
}

async function runLanes<Work, Answer>(
  { kind, tasks, onEnd, signal }: PoolRequest<Work, Answer>,
  queue: number[],
  count: number,
  putOff: (place: number) => void,
  afterwards: (lanes: readonly Lane<Work, Answer>[]) => Promise<void>,
): Promise<void> {
  const lanes = Array.from({ length: count }, () => new Lane<Work, Answer>(kind));
  const crowded = new Set<Lane<Work, Answer>>();
  const stop = (): void => lanes.forEach((lane) => void lane.close());
  const isStopped = (): boolean => signal?.aborted === true;
  const follow = async (lane: Lane<Work, Answer>): Promise<void> => {
    while (!isStopped()) {
      const place = queue.shift();
      if (place === undefined) return;
      const end = await lane.run(tasks[place] as PoolTask<Work>);
      if (isStopped()) return;
      if (crowded.delete(lane) && 'loss' in end) putOff(place);
      else onEnd(place, end);
    }
  };
  const watch = watchMemory(lanes, crowded);
  signal?.addEventListener('abort', stop);
  try {
    await Promise.all(lanes.map(follow));
    await afterwards(lanes);
  } finally {
    clearInterval(watch);
    signal?.removeEventListener('abort', stop);
    await Promise.all(lanes.map((lane) => lane.close()));
  }
}

function watchMemory<Work, Answer>(
  lanes: readonly Lane<Work, Answer>[],
  crowded: Set<Lane<Work, Answer>>,
): NodeJS.Timeout {
  const ownMb = memoryMb();
  return setInterval(() => {
    const busy = lanes.filter((lane) => lane.busyMb !== null);
    const allowed = busy.reduce((sum, lane) => sum + (lane.busyMb ?? 0), ownMb + lanes.length * WORKER_MB);
    if (busy.length === 0 || memoryMb() <= allowed) return;
    for (const lane of busy) {
      if (busy.length > 1) crowded.add(lane);
      lane.lose('too-much-memory');
    }
  }, LOOK_EVERY_MS);
}

const memoryMb = (): number => process.memoryUsage.rss() / 2 ** 20;
