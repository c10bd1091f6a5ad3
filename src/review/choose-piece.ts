import type { Take } from '../decode/index.js';
import { type HeardTake, hearTake } from './hear-take.js';
import type { Piece } from './types.js';

/** A take as heard against the piece that was played. */
export interface ChosenPiece {
  readonly piece: Piece;
  readonly heard: HeardTake;
}

/**
 * Holds a take against each piece it may be of, and keeps the one that fits best: one that was recognised before one that
 * was not, and then the one of which the greater share of notes was found as written. The first wins where two fit alike.
 *
 * @param take decoded recording
 * @param pieces one or more
 * @returns the piece, and the take as heard against it
 *
 * Source: definition.
 */
export function choosePiece(take: Take, pieces: readonly Piece[]): ChosenPiece {
  let best: ChosenPiece | null = null;
  for (const piece of pieces) {
    const heard = hearTake(take, piece.part);
    if (best === null || fitOf(heard) > fitOf(best.heard)) best = { piece, heard };
  }
  if (best === null) throw new Error('there is no piece to hold the take against');
  return best;
}

/** Below 1 for a take that was not recognised, above 1 for one that was. */
function fitOf({ alignment }: HeardTake): number {
  return alignment.share + (alignment.fit === 'this-part' ? 1 : 0);
}
