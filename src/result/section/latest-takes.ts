import { byCodePoint } from '../../base/index.js';
import type { SectionRow } from './section-row.js';

/**
 * Whose take counts for the section now: of several takes of one score by one player the latest. Of takes of the same day, and
 * of takes without one, it is the last by name; a take with a day is later than one without. Where nobody knows who played, each
 * take is somebody's.
 *
 * @param rows all takes
 * @returns those that count
 */
export function latestTakes(rows: readonly SectionRow[]): ReadonlySet<SectionRow> {
  const latest = new Map<string, SectionRow>();
  for (const row of rows) {
    const { take, score } = row;
    const key = JSON.stringify(take.player === null ? [take.name] : [take.player, score.file, score.sha256]);
    const other = latest.get(key);
    if (other === undefined || isLater(row, other)) latest.set(key, row);
  }
  return new Set(latest.values());
}

function isLater({ take: a }: SectionRow, { take: b }: SectionRow): boolean {
  return (byCodePoint(a.date ?? '', b.date ?? '') || byCodePoint(a.name, b.name)) > 0;
}
