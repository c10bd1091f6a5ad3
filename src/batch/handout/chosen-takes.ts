import { byCodePoint } from '../../base/index.js';
import type { SectionRow } from '../../result/index.js';

/** One take to hand out, and whose it is. */
export interface ChosenTake {
  /** the player; where nobody knows them the take stands for itself */
  readonly player: string;
  readonly row: SectionRow;
}

/**
 * @param rows all takes
 * @param all whether every take is wanted, not only the latest of each player and étude
 * @returns those to hand out, by player, then by day and name; takes of one day belong together
 */
export function chosenTakes(rows: readonly SectionRow[], all: boolean): ChosenTake[] {
  const takes = rows.map((row) => ({ player: row.take.player ?? row.take.name, row }));
  const ownOf = ({ player, row }: ChosenTake): string => JSON.stringify([player, row.score.file, row.score.title]);
  const dayOf = ({ row }: ChosenTake): string => row.take.date ?? '';
  const latest = new Map<string, string>();
  for (const take of takes) {
    const known = latest.get(ownOf(take));
    if (known === undefined || dayOf(take) > known) latest.set(ownOf(take), dayOf(take));
  }
  return takes
    .filter((take) => all || dayOf(take) === latest.get(ownOf(take)))
    .sort(
      (a, b) =>
        byCodePoint(a.player, b.player) ||
        byCodePoint(dayOf(a), dayOf(b)) ||
        byCodePoint(a.row.take.name, b.row.take.name),
    );
}
