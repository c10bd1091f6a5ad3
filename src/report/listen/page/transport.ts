import { fill } from './fill.js';
import type { Listening } from './listening.js';
import { orderOf } from './order.js';
import { byId, type Room } from './room.js';
import { barsInWords, takeInWords } from './say.js';
import { nextPass, placesOf } from './selection.js';

/** So long after a take has begun the one after it is got ready. */
const PREPARE_MS = 300;

/** The controls of what is heard. */
export class Transport {
  readonly #room: Room;
  readonly #listening: Listening;
  #preparing = 0;

  /**
   * @param room all that is known
   * @param listening what can be heard
   */
  constructor(room: Room, listening: Listening) {
    this.#room = room;
    this.#listening = listening;
    this.#buttons();
    room.watch((state, before) => {
      if (state.rate !== before.rate) this.#showRate();
      this.show();
    });
  }

  /** Hears, or stops. */
  toggle(): void {
    if (this.#room.state.heard === null) this.#listening.hear();
    else this.#listening.stop();
  }

  /**
   * The same bars of the next take in the order chosen, or of the one before; round and round.
   *
   * @param step 1 or -1
   */
  step(step: 1 | -1): void {
    const { state, data, head } = this.#room;
    const by = state.way === 'round' ? state.order : 'list';
    const order = orderOf(data.takes, head?.part ?? null, by, state.lot);
    const place = order.indexOf(state.take);
    const next = order[(place + step + order.length) % order.length];
    if (next === undefined) return;
    this.#room.set({ take: next });
    this.#listening.hear();
    const after = order[(place + 2 * step + 2 * order.length) % order.length];
    clearTimeout(this.#preparing);
    if (after !== undefined && after !== next) {
      this.#preparing = setTimeout(() => this.#listening.prepare(after), PREPARE_MS);
    }
  }

  /** Loops, or no longer. */
  loop(): void {
    this.#room.set({ loop: !this.#room.state.loop });
  }

  /** The same printed bars at the next time they are played. */
  pass(): void {
    const { part, state } = this.#room;
    if (part === null) return;
    this.#room.set({ bars: nextPass(part.bars, state.bars) });
    this.#listening.hear();
  }

  /** @param rate 1 as played */
  rate(rate: number): void {
    this.#room.set({ rate });
  }

  /** Shows what is chosen and what sounds. */
  show(): void {
    const { state, data, part } = this.#room;
    const go = byId('go');
    go.toggleAttribute('data-on', state.heard !== null);
    byId('go-word').textContent = state.heard === null ? data.words.hear : data.words.stop;
    byId('loop').setAttribute('aria-pressed', String(state.loop));
    const bars = barsInWords(this.#room, state.heard?.bars ?? state.bars);
    byId('where').textContent = fill(data.words.hearing, { bars, take: takeInWords(this.#room, state.take) });
    byId<HTMLSelectElement>('take').value = String(state.take);
    const passes = placesOf(part?.bars ?? [], part?.bars[state.bars.from]?.[1] ?? -1);
    const pass = byId('pass');
    pass.hidden = passes.length < 2;
    pass.textContent = fill(data.words.passNumber, {
      pass: passes.indexOf(state.bars.from) + 1,
      of: passes.length,
    });
    const pages = byId<HTMLAnchorElement>('pages');
    const address = state.hidden ? null : (this.#room.head?.pages ?? null);
    pages.hidden = address === null;
    if (address !== null) pages.href = address;
  }

  /** Names the takes in the list, or hides their names. */
  nameTakes(): void {
    for (const option of byId<HTMLSelectElement>('take').options) {
      option.textContent = takeInWords(this.#room, Number(option.value));
    }
  }

  #showRate(): void {
    for (const radio of document.querySelectorAll<HTMLInputElement>('input[name=speed]')) {
      radio.checked = Number(radio.value) === this.#room.state.rate;
    }
  }

  #buttons(): void {
    const on = (id: string, act: () => void): void => byId(id).addEventListener('click', act);
    on('go', () => this.toggle());
    on('loop', () => this.loop());
    on('previous', () => this.step(-1));
    on('next', () => this.step(1));
    on('pass', () => this.pass());
    on('more', () => this.#resize(1));
    on('fewer', () => this.#resize(-1));
    on('onward', () => this.#hearTo(this.#room.state.bars.from));
    on('whole', () => this.#hearTo(0));
    byId('take').addEventListener('change', (event) => {
      const { heard } = this.#room.state;
      const take = Number((event.target as HTMLSelectElement).value);
      this.#listening.stop();
      this.#room.set({ take });
      if (heard?.what === 'take') this.#listening.hear();
    });
    byId('pencil').addEventListener('change', (event) => {
      document.body.classList.toggle('marks-off', !(event.target as HTMLInputElement).checked);
    });
    for (const radio of document.querySelectorAll<HTMLInputElement>('input[name=speed]')) {
      radio.addEventListener('change', () => this.rate(Number(radio.value)));
    }
  }

  /** The last bar chosen is one further on, or one less far. */
  #resize(step: 1 | -1): void {
    const { bars } = this.#room.state;
    const last = (this.#room.part?.bars.length ?? 1) - 1;
    const to = Math.max(bars.from, Math.min(last, bars.to + step));
    this.#room.set({ bars: { from: bars.from, to } });
    if (this.#room.state.heard?.what === 'take') this.#listening.hear();
  }

  #hearTo(from: number): void {
    const last = (this.#room.part?.bars.length ?? 1) - 1;
    this.#listening.hearBars({ from, to: last });
  }
}
