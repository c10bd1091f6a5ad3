import type { FindingData } from '../room-data.js';
import { changesBetween } from './changes.js';
import type { Listening } from './listening.js';
import { byId, type Room } from './room.js';

const LISTS = { gone: 'gone', fresh: 'fresh', still: 'still', notComparable: 'not-comparable' } as const;

/** The same bars of one player on two days, and what changed between them. */
export class Days {
  readonly #room: Room;
  readonly #listening: Listening;
  readonly #then = byId<HTMLSelectElement>('then');
  readonly #now = byId<HTMLSelectElement>('now');

  /**
   * @param room all that is known
   * @param listening what can be heard
   */
  constructor(room: Room, listening: Listening) {
    this.#room = room;
    this.#listening = listening;
    this.#players();
    byId('both').addEventListener('click', () => this.#both());
    byId('alternate').addEventListener('click', () => this.#alternate());
    byId('change').addEventListener('click', () => this.change());
    room.watch((state, before) => {
      if (state.way === 'days' && before.way !== 'days') this.#enter();
    });
  }

  /** Goes on with the other day at the same place. */
  change(): void {
    const other = this.#room.state.take === this.#earlier ? this.#later : this.#earlier;
    this.#listening.change(other);
  }

  get #earlier(): number {
    return Number(this.#then.value);
  }

  get #later(): number {
    return Number(this.#now.value);
  }

  /** Players with takes of several days, and the takes of one. */
  #players(): void {
    const { takes } = this.#room.data;
    const heard = takes.flatMap((take, number) =>
      take.player !== '' && take.part !== null && take.sound !== null ? [{ ...take, number }] : [],
    );
    const players = new Map<string, typeof heard>();
    for (const take of heard) {
      const key = `${take.player} ${take.part}`;
      players.set(key, [...(players.get(key) ?? []), take]);
    }
    const choice = byId<HTMLSelectElement>('player');
    for (const [key, own] of players) {
      if (own.length > 1) choice.append(new Option(own[0]?.label ?? '', key));
    }
    const fillDays = (): void => {
      const own = players.get(choice.value) ?? [];
      const sorted = own.toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.number - b.number));
      for (const days of [this.#then, this.#now]) {
        days.replaceChildren(
          ...sorted.map(({ number, day, name }) => new Option(day === '' ? name : day, String(number))),
        );
      }
      this.#then.value = String(sorted[0]?.number ?? '');
      this.#now.value = String(sorted.at(-1)?.number ?? '');
    };
    choice.addEventListener('change', () => {
      fillDays();
      this.#enter();
    });
    for (const days of [this.#then, this.#now]) days.addEventListener('change', () => this.#enter());
    fillDays();
    this.#choose = (number) => {
      const key = [...players].find(([, own]) => own.length > 1 && own.some((take) => take.number === number))?.[0];
      if (key === undefined || key === choice.value) return;
      choice.value = key;
      fillDays();
    };
    this.#choose(this.#room.state.take);
  }

  /** Chooses the player of a take. */
  #choose: (number: number) => void = () => {};

  #enter(): void {
    this.#listening.stop();
    if (![this.#earlier, this.#later].includes(this.#room.state.take)) this.#choose(this.#room.state.take);
    this.#room.set({ take: this.#later, pair: [this.#earlier, this.#later] });
    this.#showChanges();
    this.#listening.prepare(this.#earlier);
  }

  /** One day, then the other. */
  #both(): void {
    this.#room.set({ take: this.#earlier });
    this.#listening.hear(() => {
      this.#room.set({ take: this.#later });
      this.#listening.hear(() => this.#listening.stop());
    });
    this.#listening.prepare(this.#later);
  }

  /** The bars on the one day and on the other, until it is stopped. */
  #alternate(): void {
    const { take } = this.#room.state;
    this.#room.set({ take: take === this.#earlier ? this.#later : this.#earlier });
    this.#listening.hear(() => this.#alternate());
    this.#listening.prepare(take);
  }

  #showChanges(): void {
    const [earlier, later] = [this.#room.takeData(this.#earlier), this.#room.takeData(this.#later)];
    if (earlier === null || later === null) return;
    const changes = changesBetween(earlier, later);
    for (const [name, id] of Object.entries(LISTS)) {
      const found = changes[name as keyof typeof LISTS].toSorted(byPlace);
      const home = byId(id);
      home.hidden = found.length === 0;
      const take = name === 'gone' ? this.#earlier : this.#later;
      home.querySelector('ul')?.replaceChildren(...found.map((finding) => this.#line(finding, take)));
    }
  }

  #line({ headline, where, places }: FindingData, take: number): HTMLElement {
    const item = document.createElement('li');
    if (places === null) {
      item.textContent = `${where}: ${headline}`;
      return item;
    }
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = `${where}: ${headline}`;
    button.addEventListener('click', () => {
      this.#room.set({ bars: { from: places[0], to: places[1] }, take });
      this.#listening.hear();
    });
    item.append(button);
    return item;
  }
}

const byPlace = (a: FindingData, b: FindingData): number => (a.places?.[0] ?? -1) - (b.places?.[0] ?? -1);
