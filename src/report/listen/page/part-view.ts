import type { PartData } from '../room-data.js';
import { fill } from './fill.js';
import { LayoutView } from './layout-view.js';
import { byId, type Room } from './room.js';
import { placesOf, reachFrom } from './selection.js';

/** One part on the page: bars that can be chosen, marks, curves, and the line that follows the music. */
export class PartView {
  readonly #room: Room;
  readonly #part: PartData;
  readonly #home: HTMLElement;
  readonly #views: readonly LayoutView[];
  /** which performance of each printed bar is shown */
  readonly #shown: number[];
  #anchor = 0;

  /**
   * @param room all that is known
   * @param number of the part
   * @param part the part
   * @param hear plays what is chosen
   */
  constructor(room: Room, number: number, part: PartData, hear: () => void) {
    this.#room = room;
    this.#part = part;
    this.#home = byId(`part-${number}`);
    this.#views = (['wide', 'narrow'] as const).map(
      (way) => new LayoutView(this.#home.querySelector(`.${way}`) as HTMLElement, part, part.layouts[way]),
    );
    this.#shown = part.layouts.wide.bars.map((_, barIndex) => placesOf(part.bars, barIndex)[0] ?? -1);
    this.#listen(hear);
  }

  /** Shows or hides the part. */
  set hidden(hidden: boolean) {
    this.#home.hidden = hidden;
  }

  /** Draws what belongs to the take that is chosen. */
  showTake(): void {
    const { take } = this.#room;
    for (const [i, way] of (['wide', 'narrow'] as const).entries()) this.#views[i]?.showMarks(take?.marks[way] ?? {});
    for (const place of this.#shown) this.#drawCurve(place);
    this.#nameBars();
  }

  /** Shows which bars are chosen. */
  showBars(): void {
    const { from, to } = this.#room.state.bars;
    if (this.#anchor !== from && this.#anchor !== to) this.#anchor = from;
    const chosen = new Set(this.#part.bars.slice(from, to + 1).map(([, barIndex]) => barIndex));
    for (const { buttons } of this.#views) {
      for (const [barIndex, button] of buttons.entries()) {
        button.setAttribute('aria-pressed', String(chosen.has(barIndex)));
        button.tabIndex = barIndex === this.#part.bars[to]?.[1] ? 0 : -1;
      }
    }
    for (let place = from; place <= to; place++) this.#showPlace(place);
  }

  /**
   * @param quarters where the music is; null when there is none
   */
  showHead(quarters: number | null): void {
    for (const view of this.#views) {
      if (quarters === null) {
        view.hideHead();
        continue;
      }
      const place = Math.max(
        0,
        this.#part.bars.findLastIndex(([, , , start]) => start <= quarters + 1e-6),
      );
      this.#showPlace(place);
      const line = view.showHead(place, quarters);
      if (line !== null && view.isShown) line.scrollIntoView({ block: 'nearest' });
    }
  }

  /** Puts the keyboard on the last bar that is chosen. */
  focus(): void {
    const barIndex = this.#part.bars[this.#room.state.bars.to]?.[1] ?? 0;
    this.#views.find(({ isShown }) => isShown)?.buttons[barIndex]?.focus();
  }

  /**
   * Moves the choice to a neighbour in print, or its end when it grows.
   *
   * @param step 1 or -1
   * @param grows the other end stays
   */
  step(step: 1 | -1, grows: boolean): void {
    const { bars } = this.#room.state;
    const { bars: performed } = this.#part;
    if (grows) {
      const end = this.#anchor === bars.from ? bars.to : bars.from;
      const moved = Math.max(0, Math.min(performed.length - 1, end + step));
      this.#room.set({ bars: { from: Math.min(this.#anchor, moved), to: Math.max(this.#anchor, moved) } });
      return;
    }
    const from = step > 0 ? bars.to : bars.from;
    this.choose(Math.max(0, Math.min(performed.length - 1, from + step)));
  }

  /** Chooses one performed bar. */
  choose(place: number): void {
    this.#anchor = place;
    this.#room.set({ bars: { from: place, to: place } });
  }

  #listen(hear: () => void): void {
    let dragged = false;
    let down = false;
    const barOf = (target: EventTarget | null): number | null => {
      const bar = target instanceof HTMLElement ? target.dataset.bar : undefined;
      return bar === undefined ? null : Number(bar);
    };
    this.#home.addEventListener('pointerdown', (event) => {
      const bar = barOf(event.target);
      down = bar !== null && event.button === 0 && event.pointerType === 'mouse';
      dragged = false;
      if (bar !== null && !event.shiftKey) this.#anchor = this.#placeFor(bar);
    });
    this.#home.addEventListener('pointerover', (event) => {
      const bar = barOf(event.target);
      if (!down || bar === null || bar === this.#part.bars[this.#anchor]?.[1]) return;
      dragged = true;
      this.#room.set({ bars: reachFrom(this.#part.bars, this.#anchor, bar) });
    });
    document.addEventListener('pointerup', () => {
      if (down && dragged) hear();
      down = false;
    });
    this.#home.addEventListener('click', (event) => {
      const bar = barOf(event.target);
      if (bar === null || dragged) {
        dragged = false;
        return;
      }
      if (event.shiftKey) this.#room.set({ bars: reachFrom(this.#part.bars, this.#anchor, bar) });
      else this.choose(this.#placeFor(bar));
      hear();
    });
  }

  /** The performance of a printed bar that is on view, so that a choice stays in the same time through a repeat. */
  #placeFor(barIndex: number): number {
    return Math.max(0, this.#shown[barIndex] ?? 0);
  }

  #showPlace(place: number): void {
    const barIndex = this.#part.bars[place]?.[1] ?? -1;
    if (this.#shown[barIndex] === place) return;
    this.#shown[barIndex] = place;
    this.#drawCurve(place);
  }

  #drawCurve(place: number): void {
    const { take, data } = this.#room;
    if (place >= 0) for (const view of this.#views) view.showCurve(place, take, data.words.notPlayed);
  }

  #nameBars(): void {
    const { words } = this.#room.data;
    const { take } = this.#room;
    for (const barIndex of this.#part.layouts.wide.bars.keys()) {
      const places = placesOf(this.#part.bars, barIndex);
      const number = this.#part.bars[places[0] ?? -1]?.[0] ?? String(barIndex + 1);
      const marks = (take?.findings ?? []).filter(({ places: at }) =>
        at === null ? false : places.some((place) => place >= at[0] && place <= at[1]),
      ).length;
      const name = [
        fill(words.barName, { bar: number }),
        places.length > 1 ? fill(words.severalPasses, { count: places.length }) : '',
        marks === 0 ? '' : fill(marks === 1 ? words.oneMarkInBar : words.marksInBar, { count: marks }),
        take !== null && places.every((place) => take.bars[place] === null) ? `, ${words.notPlayed}` : '',
      ].join('');
      for (const { buttons } of this.#views) buttons[barIndex]?.setAttribute('aria-label', name);
    }
  }
}
