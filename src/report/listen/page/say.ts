import { fill } from './fill.js';
import type { Room } from './room.js';
import type { Selection } from './selection.js';

/**
 * @param room its words
 * @param bars performed bars
 * @returns the bars in words: "Bar 12", "Bars 12–14, time 2"
 */
export function barsInWords({ part, data: { words } }: Room, { from, to }: Selection): string {
  const [first, last] = [part?.bars[from], part?.bars[to]];
  if (first === undefined || last === undefined) return '';
  const values = { bar: first[0], to: last[0] };
  const named = fill(from === to ? words.bar : words.bars, values);
  return first[2] > 1 ? named + fill(words.pass, { pass: first[2] }) : named;
}

/**
 * @param room its words and what is hidden
 * @param take place of a take in the room
 * @returns the player and the day, or a number where names are hidden
 */
export function takeInWords(room: Room, take: number): string {
  const { hidden, lot } = room.state;
  if (hidden) return fill(room.data.words.hidden, { number: lot.indexOf(take) + 1 });
  const { label = '', day = '' } = room.data.takes[take] ?? {};
  return day === '' ? label : `${label}, ${day}`;
}

/** @param text what is told to whoever looks or listens; nothing takes back what was told before */
export function tell(text: string): void {
  const said = document.getElementById('said');
  if (said !== null && said.textContent !== text) said.textContent = text;
}
