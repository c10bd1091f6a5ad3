import type { ProgressInParts } from './progress-in-parts.js';

/**
 * @param progress the document in parts
 * @returns the whole of it to be written down: a function stands for what it gives, which is made when it is come to
 */
export function progressDocument({ about, pieces }: ProgressInParts): object {
  const { unplaced, repeated, failures, ...before } = about;
  return {
    ...before,
    pieces: pieces.map(({ about: piece, count, players, section }) => ({
      ...piece,
      players: () => players(0, count),
      section: () => section(0, count),
    })),
    ...{ unplaced, repeated, failures },
  };
}
