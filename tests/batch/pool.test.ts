import { describe, expect, it } from 'vitest';
import { secondsFor, takeLimits } from '../../src/batch/pool/limits.js';
import { runPool } from '../../src/batch/pool/run-pool.js';
import type { PoolEnd } from '../../src/batch/pool/types.js';

/** A busy machine starts a worker in less. Work that is allowed more time takes longer than this. */
const PATIENCE_SECONDS = 5;

const kind = { file: new URL('./workers/acting.mjs', import.meta.url), workerData: null };

interface Bounds {
  readonly firstSeconds?: number;
  readonly heapMb?: number;
  readonly totalMb?: number;
}

/** Lets workers act, and tells how each act ended. */
async function played(acts: readonly string[], lanes: number, bounds: Bounds = {}): Promise<PoolEnd<number>[]> {
  const ends: PoolEnd<number>[] = [];
  const limits = { firstSeconds: 300, heapMb: 64, totalMb: 4000, ...bounds };
  await runPool<{ act: string; value: number }, number>({
    ...{ kind, lanes, tasks: acts.map((act, value) => ({ work: { act, value }, limits })) },
    onEnd: (place, end) => {
      expect(ends[place]).toBeUndefined();
      ends[place] = end;
    },
  });
  return ends;
}

const answers = (count: number): { answer: number }[] => Array.from({ length: count }, (_, answer) => ({ answer }));

describe('a pool of workers', () => {
  it.each([1, 2, 5])('does every task once, with %d at a time', async (lanes) => {
    expect(await played(Array(9).fill('answer'), lanes)).toEqual(answers(9));
  });

  it.each([1, 2])(
    'loses only the task whose worker throws, ends or leaves a fault unheeded; %d at a time',
    async (lanes) => {
      const ends = await played(['answer', 'throw', 'answer', 'exit', 'answer', 'reject', 'answer', 'answer'], lanes);
      const whole = answers(8).map((end, i) => (i === 1 || i === 3 || i === 5 ? { loss: 'worker-died' } : end));
      expect(ends).toEqual(whole);
    },
  );

  it('stops a worker that hangs, also one that has asked for more time', async () => {
    const ends = await played(['hang', 'answer', 'hang-after-more-time', 'answer'], 2, {
      firstSeconds: PATIENCE_SECONDS,
    });
    expect(ends).toEqual([{ loss: 'took-too-long' }, { answer: 1 }, { loss: 'took-too-long' }, { answer: 3 }]);
  });

  it('leaves a worker the time it was allowed', async () => {
    expect(await played(['answer', 'work-within-more-time'], 1, { firstSeconds: PATIENCE_SECONDS })).toEqual(
      answers(2),
    );
  });

  it('bounds the heap of a worker', async () => {
    const ends = await played(['answer', 'grow-heap', 'answer'], 2, { heapMb: 32 });
    expect(ends).toEqual([{ answer: 0 }, { loss: 'too-much-memory' }, { answer: 2 }]);
  });

  it('bounds the memory outside of the heap, and finds out who is at fault', async () => {
    const before = process.memoryUsage.rss();
    const acts = ['work-within-more-time', 'grow-buffers', 'answer', 'work-within-more-time'];
    const ends = await played(acts, 2, { totalMb: 50 });
    expect(ends).toEqual([{ answer: 0 }, { loss: 'too-much-memory' }, { answer: 2 }, { answer: 3 }]);
    expect((process.memoryUsage.rss() - before) / 2 ** 20).toBeLessThan(900);
  });

  it('lets a worker that is up be asked once more at the end, and starts none for it', async () => {
    const limits = { firstSeconds: 300, heapMb: 64, totalMb: 4000 };
    const asked = async (acts: readonly string[], more: string): Promise<(number | null)[]> => {
      const answers: (number | null)[] = [];
      await runPool<{ act: string; value: number }, number>({
        ...{ kind, lanes: 1, tasks: acts.map((act, value) => ({ work: { act, value }, limits })), onEnd: () => {} },
        afterwards: async (ask) => void answers.push(await ask({ act: more, value: 7 }, 60)),
      });
      return answers;
    };
    expect(await asked(['answer', 'answer'], 'answer')).toEqual([7]);
    expect(await asked(['answer'], 'throw')).toEqual([null]);
    expect(await asked(['answer', 'exit'], 'answer')).toEqual([null]);
    expect(await asked([], 'answer')).toEqual([null]);
  });

  it('stops at once when it is told to, and is told of nothing after', async () => {
    const stop = new AbortController();
    const ended: number[] = [];
    const limits = { firstSeconds: 300, heapMb: 64, totalMb: 4000 };
    const acts = ['answer', 'hang', 'answer', 'hang', 'answer'];
    await runPool({
      ...{ kind, lanes: 2, signal: stop.signal },
      tasks: acts.map((act, value) => ({ work: { act, value }, limits })),
      onEnd: (place) => {
        ended.push(place);
        // Both workers hang from here on.
        if (ended.length === 2) setTimeout(() => stop.abort(), 200);
      },
    });
    expect(ended.sort()).toEqual([0, 2]);
  });
});

describe('the bounds on a take', () => {
  it('grow with its length, and are what the user says where the user says it', () => {
    const [short, long] = [takeLimits(2 ** 20, {}), takeLimits(2 ** 28, {})];
    expect(long.heapMb).toBeGreaterThan(short.heapMb);
    expect(long.totalMb).toBeGreaterThan(short.totalMb);
    expect(secondsFor(600, 1, {})).toBeGreaterThan(secondsFor(60, 1, {}));
    expect(secondsFor(60, 4, {})).toBeGreaterThan(secondsFor(60, 1, {}));
    expect(takeLimits(2 ** 28, { seconds: 5, megabytes: 100 })).toEqual({ firstSeconds: 5, heapMb: 100, totalMb: 100 });
    expect(secondsFor(600, 3, { seconds: 5 })).toBe(5);
  });
});
