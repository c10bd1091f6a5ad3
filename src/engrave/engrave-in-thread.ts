import { Worker } from 'node:worker_threads';
import type { EngravedPart } from './engrave-part.js';

/** Parts being laid out. */
export interface PartsEngraved {
  /** one for each part that was given, null where it cannot be engraved; never fails */
  readonly parts: Promise<readonly (EngravedPart | null)[]>;
  /** ends what is still at work; `parts` may then stay open */
  readonly stop: () => Promise<void>;
}

/**
 * Lays parts out in a thread of its own, so that others may listen meanwhile, and the engraving program is gone again when
 * it is done. A part that brings the program down costs its excerpts and nothing else.
 *
 * @param musicXml the parts as `engravingCopy` of the room `score` makes them; null for what is not to be engraved
 * @returns what is at work
 *
 * Node:worker_threads for how a thread ends.
 */
export function engraveInThread(musicXml: readonly (string | null)[]): PartsEngraved {
  const thread = new Worker(new URL('./engraver-thread.js', import.meta.url), { workerData: musicXml });
  const parts = new Promise<readonly (EngravedPart | null)[]>((resolve) => {
    const nothing = (): void => resolve(musicXml.map(() => null));
    thread.once('message', resolve);
    thread.once('error', nothing);
    thread.once('exit', nothing);
  });
  return {
    parts,
    stop: async () => {
      thread.removeAllListeners('exit');
      await thread.terminate();
    },
  };
}
