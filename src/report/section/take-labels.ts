import type { SectionTake } from '../../result/index.js';
import type { SectionWords } from '../../words/index.js';

/**
 * @param takes the section's takes
 * @param words what the sheet says
 * @returns a label a take: the player's name; the take's name where a player is unknown or has several takes;
 * what was not played or reviewed is said
 */
export function takeLabels(takes: readonly SectionTake[], words: SectionWords): string[] {
  const counts = new Map<string, number>();
  for (const { player } of takes) if (player !== null) counts.set(player, (counts.get(player) ?? 0) + 1);
  return takes.map(({ player, name, date, outcome, played }) => {
    const several = player !== null && (counts.get(player) ?? 0) > 1;
    const label = player === null ? name : several && date === null ? words.nameOfTake(player, name) : player;
    if (played !== undefined && (played.played < played.of || played.ending === 'cut-off'))
      return words.partly(label, played);
    return words.outcome[outcome](label);
  });
}
