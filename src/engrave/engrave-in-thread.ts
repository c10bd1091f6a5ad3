import { Worker } from 'node:worker_threads';
import type { EngravedPart } from './engrave-part.js';

/** A part takes well under a second; a busy machine is given many times that. Working values. */
const LIMITS: EngraverLimits = { seconds: 60, heapMb: 1024 };

/** How much the laying out of one part may take. */
interface EngraverLimits {
  readonly seconds: number;
  /** of the engine's heap; what the engraving program itself may use is bounded in its thread */
  readonly heapMb: number;
}

/** What lays parts out, and its bounds. */
export interface Engraver {
  /** the file of the thread */
  readonly file: URL;
  readonly limits: EngraverLimits;
}

/** What the thread says, for each part in turn. */
export type EngraverMessage = EngravedPart | null;

/** Parts being laid out. */
export interface PartsEngraved {
  /** one for each part that was given, null where it cannot be engraved; never fails */
  readonly parts: Promise<readonly (EngravedPart | null)[]>;
  /** ends what is still at work; `parts` is then cut short */
  readonly stop: () => Promise<void>;
}

/**
 * Lays parts out in a thread of its own, so that others may listen meanwhile, and the engraving program is gone again when
 * it is done. A part that brings the program down, takes too long or too much memory costs its own excerpts and nothing
 * else: the thread is started anew for those after it.
 *
 * @param musicXml the parts as `engravingCopy` of the room `score` makes them; null for what is not to be engraved
 * @param engraver what lays them out
 * @returns what is at work
 *
 * Node:worker_threads for how a thread ends.
 */
export function engraveInThread(musicXml: readonly (string | null)[], engraver: Engraver = OWN): PartsEngraved {
  let thread: Worker | null = null;
  let stopped = false;
  const engraveAll = async (): Promise<(EngravedPart | null)[]> => {
    const parts: (EngravedPart | null)[] = [];
    while (parts.length < musicXml.length && !stopped) {
      const left = musicXml.slice(parts.length);
      const { limits } = engraver;
      thread = new Worker(engraver.file, {
        workerData: left,
        resourceLimits: { maxOldGenerationSizeMb: limits.heapMb },
      });
      const done = await untilItFails(thread, left.length, limits.seconds);
      parts.push(...done, ...(done.length < left.length ? [null] : []));
      await thread.terminate();
    }
    return parts;
  };
  return {
    parts: engraveAll(),
    stop: async () => {
      stopped = true;
      await thread?.terminate();
    },
  };
}

const OWN: Engraver = { file: new URL('./engraver-thread.js', import.meta.url), limits: LIMITS };

/** Parts as they come, up to the one at which the thread fails. */
function untilItFails(thread: Worker, count: number, seconds: number): Promise<(EngravedPart | null)[]> {
  return new Promise((resolve) => {
    const done: (EngravedPart | null)[] = [];
    const end = (): void => {
      clearTimeout(timer);
      resolve(done);
    };
    let timer = setTimeout(end, seconds * 1000);
    thread.on('message', (part: EngraverMessage) => {
      clearTimeout(timer);
      done.push(part);
      if (done.length === count) end();
      else timer = setTimeout(end, seconds * 1000);
    });
    thread.once('error', end);
    thread.once('exit', end);
  });
}
