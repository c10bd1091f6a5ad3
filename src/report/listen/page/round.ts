import { fill } from './fill.js';
import type { Listening } from './listening.js';
import { marksTable, readMark } from './marks-table.js';
import { drawLots, orderOf } from './order.js';
import { OwnMarks } from './own-marks.js';
import { byId, type Room, type State } from './room.js';
import { takeInWords } from './say.js';
import type { Transport } from './transport.js';

/** The same bars take after take, and what one marks. */
export class Round {
  readonly #room: Room;
  readonly #listening: Listening;
  readonly #transport: Transport;
  readonly #marks: OwnMarks;

  /**
   * @param room all that is known
   * @param listening what can be heard
   * @param transport goes from take to take
   */
  constructor(room: Room, listening: Listening, transport: Transport) {
    this.#room = room;
    this.#listening = listening;
    this.#transport = transport;
    this.#marks = new OwnMarks(room.data.id);
    this.#orders();
    this.#fields();
    this.#table();
    room.watch((state, before) => {
      if (state.order !== before.order || state.hidden !== before.hidden || state.lot !== before.lot) this.#list();
      if (state.take !== before.take) this.#showTake();
      if (
        state.take !== before.take ||
        state.bars !== before.bars ||
        state.matched !== before.matched ||
        state.way !== before.way
      )
        this.#showLoudness();
    });
    this.#list();
    this.#showTake();
  }

  /** Puts the keyboard where a mark is written. */
  focusMark(): void {
    const field = byId<HTMLInputElement>('mark');
    field.focus();
    field.select();
  }

  get #order(): number[] {
    const { data, head, state } = this.#room;
    return orderOf(data.takes, head?.part ?? null, state.order, state.lot);
  }

  get #criterion(): string {
    return byId<HTMLSelectElement>('criterion').value;
  }

  #orders(): void {
    byId('order').addEventListener('change', (event) => {
      const order = (event.target as HTMLSelectElement).value;
      const { data } = this.#room;
      const isLot = order === 'lot';
      const lot = isLot ? drawLots(data.takes.length, chance) : this.#room.state.lot;
      this.#listening.stop();
      this.#hide(isLot, { order, lot });
      const [first] = this.#order;
      if (isLot && first !== undefined) this.#room.set({ take: first });
    });
    byId('reveal').addEventListener('click', () => {
      this.#hide(false, {});
    });
    byId('loudness').addEventListener('change', (event) => {
      this.#room.set({ matched: (event.target as HTMLSelectElement).value === 'matched' });
    });
    byId('round').addEventListener('click', (event) => {
      const take = event.target instanceof HTMLElement ? event.target.closest('button')?.dataset.take : undefined;
      if (take === undefined) return;
      this.#room.set({ take: Number(take) });
      this.#listening.hear();
    });
  }

  /** While names are hidden there is no way to days, where they stand. */
  #hide(hidden: boolean, change: Partial<State>): void {
    byId('reveal').hidden = !hidden;
    const days = document.querySelector<HTMLInputElement>('input[name=way][value=days]');
    if (days !== null) days.disabled = hidden;
    this.#room.set({ ...change, hidden });
  }

  #fields(): void {
    const [mark, word, judge] = ['mark', 'word', 'judge'].map((id) => byId<HTMLInputElement>(id)) as [
      HTMLInputElement,
      HTMLInputElement,
      HTMLInputElement,
    ];
    const name = (): string => this.#room.head?.name ?? '';
    judge.value = this.#marks.judge;
    judge.addEventListener('input', () => {
      this.#marks.judge = judge.value;
      this.#kept();
    });
    mark.addEventListener('input', () => {
      const points = readMark(mark.value);
      const isWrong = points === null && mark.value.trim() !== '';
      mark.setAttribute('aria-invalid', String(isWrong));
      this.#say(isWrong ? this.#room.data.words.badMark : '');
      if (!isWrong) this.#marks.setMark(name(), this.#criterion, points);
      this.#kept();
      this.#showMark(this.#room.state.take);
    });
    word.addEventListener('input', () => {
      this.#marks.setWord(name(), word.value);
      this.#kept();
      this.#showMark(this.#room.state.take);
    });
    byId('criterion').addEventListener('change', () => {
      this.#list();
      this.#showTake();
    });
    for (const field of [mark, word]) {
      field.addEventListener('keydown', (event) => {
        const step = event.key === 'Enter' || event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : null;
        if (step === null || event.isComposing) return;
        event.preventDefault();
        this.#transport.step(step);
        this.focusMark();
      });
    }
  }

  #table(): void {
    byId('save').addEventListener('click', () => {
      const { data } = this.#room;
      const { words } = data;
      const { marks, alone } = this.#marks.all(data.takes.map(({ name }) => name));
      if (this.#marks.judge.trim() === '') {
        this.#say(words.noJudge);
        byId('judge').focus();
        return;
      }
      this.#say(alone === 0 ? '' : fill(words.leftOut, { count: alone }));
      save(marksTable(this.#marks.judge.trim(), marks), words.file);
    });
    let sure = false;
    const forget = byId('forget');
    forget.addEventListener('blur', () => {
      sure = false;
    });
    forget.addEventListener('click', () => {
      if (!sure) {
        sure = true;
        this.#say(this.#room.data.words.forgetAgain);
        return;
      }
      sure = false;
      this.#marks.forget();
      byId<HTMLInputElement>('judge').value = '';
      this.#say('');
      this.#list();
      this.#showTake();
    });
  }

  #list(): void {
    byId('round').replaceChildren(
      ...this.#order.map((number) => {
        const [item, button, marked] = ['li', 'button', 'span'].map((tag) => document.createElement(tag)) as [
          HTMLElement,
          HTMLButtonElement,
          HTMLElement,
        ];
        button.type = 'button';
        button.dataset.take = String(number);
        button.textContent = takeInWords(this.#room, number);
        item.append(button, marked);
        return item;
      }),
    );
    for (const number of this.#order) this.#showMark(number);
    this.#showCurrent();
  }

  #showMark(number: number): void {
    const marked = byId('round').querySelector(`[data-take="${number}"]`)?.nextElementSibling;
    const name = this.#room.data.takes[number]?.name ?? '';
    const mark = this.#marks.markOf(name, this.#criterion);
    if (marked) marked.textContent = [mark ?? '', this.#marks.wordOf(name)].filter((one) => one !== '').join(' · ');
  }

  #showTake(): void {
    const { name = '' } = this.#room.head ?? {};
    const mark = byId<HTMLInputElement>('mark');
    mark.value = String(this.#marks.markOf(name, this.#criterion) ?? '');
    mark.removeAttribute('aria-invalid');
    byId<HTMLInputElement>('word').value = this.#marks.wordOf(name);
    this.#showCurrent();
  }

  #showCurrent(): void {
    for (const button of byId('round').querySelectorAll('button')) {
      const isCurrent = button.dataset.take === String(this.#room.state.take);
      button.setAttribute('aria-current', String(isCurrent));
    }
  }

  #showLoudness(): void {
    const { state, data } = this.#room;
    if (state.way !== 'round') return;
    const db = this.#listening.softerDb(state.take);
    const shown = (Math.round(db * 10) / 10).toLocaleString(document.documentElement.lang);
    byId('softer').textContent = db < 0.05 ? data.words.asRecorded : fill(data.words.quieter, { db: shown });
  }

  #kept(): void {
    if (!this.#marks.isKept) this.#say(this.#room.data.words.notKept);
  }

  #say(text: string): void {
    byId('marks-said').textContent = text;
  }
}

/** From 0 to 1, by the browser's own source of chance. */
function chance(): number {
  return (crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) / 2 ** 32;
}

function save(text: string, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'text/csv' }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
