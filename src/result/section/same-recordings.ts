import { groupBy } from '../../base/index.js';
import type { SectionRow } from './section-row.js';

/**
 * Recordings that were handed in, byte by byte the same, for different players: one of them is another's, whatever the names
 * say. The same take handed in twice by one player is none, and nothing is said of takes whose hash is not known.
 *
 * @param rows all takes
 * @returns the names of the takes, a list a recording, in the order in which the takes are given
 */
export function sameRecordings(rows: readonly SectionRow[]): string[][] {
  return [
    ...groupBy(
      rows.filter(({ sha256 }) => sha256 !== ''),
      ({ sha256 }) => sha256,
    ).values(),
  ]
    .filter((same) => new Set(same.map(({ take }) => take.player ?? take.name)).size > 1)
    .map((same) => same.map(({ take }) => take.name));
}
