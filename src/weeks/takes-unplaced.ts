import { foldName } from './fold-name.js';
import type { ProgressResult } from './progress-result-schema.js';
import type { Played } from './sort-etudes.js';
import type { LostTake } from './types.js';

/**
 * @param played études with their players' results
 * @param lost takes that could not be read
 * @returns takes that cannot be followed, because player or day is not known
 */
export function takesUnplaced(played: readonly Played[], lost: readonly LostTake[]): ProgressResult['unplaced'] {
  const followed = played.map(({ etude, players }) => ({
    scores: new Set(etude.files.map(({ sha256 }) => sha256)),
    names: new Set(players.map((placed) => foldName(placed[0]?.player ?? ''))),
  }));
  const isPlaced = ({ player, scoreSha256 }: LostTake): boolean =>
    player !== null && followed.some(({ scores, names }) => scores.has(scoreSha256) && names.has(foldName(player)));
  const takes = played.flatMap(({ etude, players }) => {
    const placed = new Set(players.flat().map(({ result }) => result));
    return etude.results.filter(({ result }) => !placed.has(result));
  });
  return [
    ...takes.map(({ file, result: { take, outcome } }) => ({ file, player: take.player, date: take.date, outcome })),
    ...lost
      .filter((one) => !isPlaced(one))
      .map(({ file, player, date }) => ({ file, player, date, outcome: 'failed' as const })),
  ];
}
