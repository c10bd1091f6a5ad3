import type { PartData, RoomData, TakeData, TakeHead } from '../room-data.js';
import type { Selection } from './selection.js';

/** What sounds, and which bars of it. */
export interface Heard {
  readonly what: 'take' | 'written' | 'turn';
  readonly bars: Selection;
}

/** Everything that changes while the room is used. */
export interface State {
  readonly take: number;
  readonly bars: Selection;
  readonly loop: boolean;
  readonly rate: number;
  readonly way: 'take' | 'round' | 'days';
  readonly order: string;
  readonly lot: readonly number[];
  /** names are hidden, because the order is by lot */
  readonly hidden: boolean;
  readonly matched: boolean;
  /** the two days that are compared */
  readonly pair: readonly number[];
  readonly heard: Heard | null;
}

/** Data of this many takes is kept at a time. */
const MOST_KEPT = 4;

/** What the page was handed, and what is chosen at the moment. */
export class Room {
  readonly data: RoomData;
  #state: State;
  readonly #listeners: ((state: State, before: State) => void)[] = [];
  readonly #kept = new Map<number, TakeData | null>();

  /**
   * @param data of the page
   * @param state to begin with
   */
  constructor(data: RoomData, state: State) {
    this.data = data;
    this.#state = state;
  }

  get state(): State {
    return this.#state;
  }

  /** Changes the state and tells all who listen. */
  set(change: Partial<State>): void {
    const before = this.#state;
    this.#state = { ...before, ...change };
    for (const listener of this.#listeners) listener(this.#state, before);
  }

  /** @param listener told of every change, with the state before */
  watch(listener: (state: State, before: State) => void): void {
    this.#listeners.push(listener);
  }

  get head(): TakeHead | null {
    return this.data.takes[this.#state.take] ?? null;
  }

  /** The part of the take that is chosen; null for a take that was not reviewed. */
  get part(): PartData | null {
    const place = this.head?.part ?? null;
    return place === null ? null : (this.data.parts[place] ?? null);
  }

  get take(): TakeData | null {
    return this.takeData(this.#state.take);
  }

  /**
   * @param number of a take
   * @returns what is known of it; null when it was not reviewed
   */
  takeData(number: number): TakeData | null {
    const kept = this.#kept.get(number);
    if (kept !== undefined) return kept;
    const read = readBlock<TakeData>(`take-data-${number}`);
    if (this.#kept.size >= MOST_KEPT) this.#kept.delete(this.#kept.keys().next().value ?? -1);
    this.#kept.set(number, read);
    return read;
  }
}

/**
 * @param id of a block of data on the page
 * @returns what it holds; null when there is none
 */
export function readBlock<T>(id: string): T | null {
  const block = document.getElementById(id);
  return block === null ? null : (JSON.parse(block.textContent ?? 'null') as T);
}

/**
 * @param id of an element of the page
 * @returns the element
 * @throws when the page has none
 */
export function byId<T extends HTMLElement>(id: string): T {
  const found = document.getElementById(id);
  if (found === null) throw new Error(id);
  return found as T;
}
