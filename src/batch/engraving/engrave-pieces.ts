import { Worker } from 'node:worker_threads';
import type { EngravedPart } from '../../report/index.js';
import type { Piece } from '../types.js';

/** What the thread that lays parts out is told. */
export interface EngravingWork {
  /** the parts for engraving; null for what is not to be engraved */
  readonly musicXml: readonly (string | null)[];
}

/** Parts being laid out. */
export interface PiecesEngraved {
  /** one for each piece, null where it cannot be engraved; never fails */
  readonly parts: Promise<readonly (EngravedPart | null)[]>;
  /** ends what is still at work; `parts` may then stay open */
  readonly stop: () => Promise<void>;
}

/**
 * Lays parts out in a thread of its own, beside the workers that already listen: once for all of them, and the engraving
 * program is gone again when it is done. A part that brings the program down costs its excerpts and nothing else.
 *
 * @param pieces with the parts for engraving
 * @returns what is at work
 *
 * Source: definition; node:worker_threads for how a thread ends.
 */
export function engravePieces(pieces: readonly Piece[]): PiecesEngraved {
  const workerData: EngravingWork = { musicXml: pieces.map(({ musicXml = null }) => musicXml) };
  const thread = new Worker(new URL('./engraver.js', import.meta.url), { workerData });
  const parts = new Promise<readonly (EngravedPart | null)[]>((resolve) => {
    const nothing = (): void => resolve(pieces.map(() => null));
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
