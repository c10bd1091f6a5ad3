import type { SectionTake } from '../../section/section-result-schema.js';

const OUTCOMES: Record<SectionTake['outcome'], string> = {
  reviewed: '',
  'not-this-score': ' (does not fit the part)',
  'too-poor': ' (could not be heard)',
};

/**
 * @param takes the section's takes
 * @returns a label a take: the player's name; the take's name where a player is unknown or has several takes
 *
 * Source: definition.
 */
export function takeLabels(takes: readonly SectionTake[]): string[] {
  const counts = new Map<string, number>();
  for (const { player } of takes) if (player !== null) counts.set(player, (counts.get(player) ?? 0) + 1);
  return takes.map(({ player, name, date, outcome }) => {
    const several = player !== null && (counts.get(player) ?? 0) > 1;
    const label = player === null ? name : several && date === null ? `${player}, ${name}` : player;
    return `${label}${OUTCOMES[outcome]}`;
  });
}
