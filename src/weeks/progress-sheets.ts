import type { PieceInParts, ProgressInParts } from './progress-in-parts.js';
import type { ProgressResult } from './progress-result-schema.js';

/** A part of the document that is as large as pages may be. */
export interface ProgressSheet {
  /** the document of these players alone; changes are told from chance by the takes of all */
  readonly progress: ProgressResult;
  /** from 1 */
  readonly sheet: number;
  readonly of: number;
}

/**
 * Divides the document for pages, étude by étude and player by player in the order of their names. What could not be followed
 * or read stands in the first part.
 *
 * @param progress the document in parts
 * @param mostPlayers in one sheet
 * @returns sheets, each made when it is come to, so that one is in memory at a time; one when there are no more players
 */
export function* progressSheets({ about, pieces }: ProgressInParts, mostPlayers: number): Generator<ProgressSheet> {
  const players = pieces.reduce((sum, { count }) => sum + count, 0);
  const of = Math.max(1, Math.ceil(players / mostPlayers));
  if (of === 1) {
    yield { progress: { ...about, pieces: pieces.map((piece) => within(piece, 0, piece.count)) }, sheet: 1, of };
    return;
  }
  for (let sheet = 1; sheet <= of; sheet++) {
    const here = stretches(pieces, (sheet - 1) * mostPlayers, sheet * mostPlayers);
    const progress: ProgressResult = {
      ...about,
      ...(sheet === 1 ? {} : { unplaced: [], repeated: [], failures: [] }),
      takes: here.reduce((sum, { piece, from, to }) => sum + piece.takes(from, to), 0),
      pieces: here.map(({ piece, from, to }) => within(piece, from, to)),
    };
    yield { progress, sheet, of };
  }
}

interface Stretch {
  readonly piece: PieceInParts;
  readonly from: number;
  readonly to: number;
}

/** Players between two places, counted through all études. */
function stretches(pieces: readonly PieceInParts[], begin: number, end: number): Stretch[] {
  const found: Stretch[] = [];
  let before = 0;
  for (const piece of pieces) {
    const from = Math.max(0, begin - before);
    const to = Math.min(piece.count, end - before);
    if (from < to) found.push({ piece, from, to });
    before += piece.count;
  }
  return found;
}

function within({ about, players, section }: PieceInParts, from: number, to: number): ProgressResult['pieces'][number] {
  return { ...about, players: [...players(from, to)], section: section(from, to) };
}
