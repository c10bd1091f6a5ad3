import type { Listening } from './listening.js';
import type { Room } from './room.js';
import { takeInWords } from './say.js';

/**
 * What is told of each take: shows that of the take chosen, and gives each finding that can be heard its button.
 *
 * @param room all that is known
 * @param listening what can be heard
 * @returns shows what belongs to the take chosen; to be called when another is
 */
export function tellTakes(room: Room, listening: Listening): () => void {
  const sections = room.data.takes.map((_, number) => document.getElementById(`take-${number}`));
  const furnished = new Set<number>();
  // the browser's own controls are for pages without scripts; elements that nobody uses cost memory
  for (const [i, section] of sections.entries()) {
    if (room.data.takes[i]?.part !== null) section?.querySelector('audio')?.remove();
  }
  return () => {
    const { take: number, way, hidden } = room.state;
    for (const [i, section] of sections.entries()) {
      if (section === null) continue;
      const isShown = i === number && way === 'take';
      section.classList.toggle('shown', isShown);
      if (!isShown) continue;
      const [who, day] = [section.querySelector('.who'), section.querySelector<HTMLElement>('.day')];
      if (who !== null) who.textContent = hidden ? takeInWords(room, i) : (room.data.takes[i]?.label ?? '');
      if (day !== null) day.hidden = hidden;
    }
    if (furnished.has(number)) return;
    furnished.add(number);
    for (const { id, hear, places, passage } of room.take?.findings ?? []) {
      if (passage === null || places === null) continue;
      const told = document.querySelector(`#${id} .told`);
      const row = document.createElement('div');
      const button = document.createElement('button');
      row.className = 'row';
      button.type = 'button';
      button.textContent = hear;
      button.addEventListener('click', () => {
        const bars = { from: places[0], to: places[1] };
        room.set({ bars });
        listening.hearPassage(passage, bars);
      });
      row.append(button);
      told?.querySelector('h4')?.after(row);
    }
  };
}
