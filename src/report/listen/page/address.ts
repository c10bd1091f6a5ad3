import type { BarData, TakeHead } from '../room-data.js';
import { placesOf, reachFrom, type Selection } from './selection.js';

/** What an address asks for; null where it says nothing, or nothing that is there. */
export interface Asked {
  readonly take: number | null;
  /** of a performed bar by its printed number, to another, at which time */
  readonly bar: string | null;
  readonly to: string | null;
  readonly pass: number;
}

/**
 * @param hash the part of an address from `#` on: `#bar=12&to=14&pass=2&take=NAME`
 * @param takes of the room
 * @returns what it asks for
 */
export function readAddress(hash: string, takes: readonly TakeHead[]): Asked {
  const said = new URLSearchParams(hash.replace(/^#/, ''));
  const take = takes.findIndex(({ name }) => name === said.get('take'));
  return {
    take: take < 0 ? null : take,
    bar: said.get('bar'),
    to: said.get('to'),
    pass: Math.max(1, Number(said.get('pass')) || 1),
  };
}

/**
 * @param asked by an address
 * @param bars as performed
 * @returns the bars it means; null when there is no such bar
 */
export function barsAsked({ bar, to, pass }: Asked, bars: readonly BarData[]): Selection | null {
  const first = bars.find(([number]) => number === bar);
  if (first === undefined) return null;
  const places = placesOf(bars, first[1]);
  const from = places.find((place) => bars[place]?.[2] === pass) ?? places[0] ?? 0;
  const last = bars.find(([number]) => number === (to ?? bar)) ?? first;
  return reachFrom(bars, from, last[1]);
}

/**
 * @param selection of bars
 * @param bars as performed
 * @param take its name; null when it is not to be told
 * @returns the address of the very bars, from `#` on
 */
export function writeAddress({ from, to }: Selection, bars: readonly BarData[], take: string | null): string {
  const [first, last] = [bars[from], bars[to]];
  if (first === undefined || last === undefined) return '#';
  const said = new URLSearchParams({ bar: first[0] });
  if (to !== from) said.set('to', last[0]);
  if (first[2] > 1) said.set('pass', String(first[2]));
  if (take !== null) said.set('take', take);
  return `#${said}`;
}
