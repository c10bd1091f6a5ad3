import type { BarData, LayoutData, PartData, TakeData } from '../room-data.js';
import { alongKnots, type Knots } from './clock.js';
import { drawBar } from './draw-bar.js';

const SVG = 'http://www.w3.org/2000/svg';
/** Where movement is not welcome the line goes from head to head and does not glide. */
const STILL = matchMedia('(prefers-reduced-motion: reduce)');

/** A line of the part on the page. */
interface Line {
  readonly home: HTMLElement;
  readonly marks: SVGGElement;
  readonly head: SVGLineElement;
}

/** The engraved part in one way of breaking lines, with what is drawn over it. */
export class LayoutView {
  /** one for each printed bar */
  readonly buttons: readonly HTMLButtonElement[];
  readonly #layout: LayoutData;
  readonly #bars: readonly BarData[];
  readonly #lines: readonly Line[];
  readonly #curves: readonly SVGGElement[];
  /** for each performed bar, from quarters to x */
  readonly #ways: readonly Knots[];
  #lit: Line | null = null;

  /**
   * @param home of the lines
   * @param part what they show
   * @param layout where everything stands
   */
  constructor(home: HTMLElement, part: PartData, layout: LayoutData) {
    this.#layout = layout;
    this.#bars = part.bars;
    this.#lines = [...home.querySelectorAll<HTMLElement>('.line')].map((line) => lineOf(line));
    this.#ways = waysOf(part, layout);
    const homes = this.#lines.map(({ home: line }) => {
      const bars = document.createElement('div');
      bars.className = 'bars';
      line.append(bars);
      return bars;
    });
    this.buttons = layout.bars.map(([line, left, right], barIndex) => {
      const button = document.createElement('button');
      const width = layout.lines[line]?.width ?? 1;
      button.type = 'button';
      button.dataset.bar = String(barIndex);
      button.style.left = `${(100 * left) / width}%`;
      button.style.width = `${(100 * (right - left)) / width}%`;
      homes[line]?.append(button);
      return button;
    });
    this.#curves = layout.bars.map(([line]) => {
      const group = document.createElementNS(SVG, 'g');
      this.#lines[line]?.marks.before(group);
      return group;
    });
  }

  /** Whether this way of breaking lines is the one that is seen. */
  get isShown(): boolean {
    return this.buttons[0]?.offsetParent !== null;
  }

  /** @param marks pencil marks as elements of SVG, by line; the page's own */
  showMarks(marks: Readonly<Record<number, string>>): void {
    for (const [i, line] of this.#lines.entries()) line.marks.innerHTML = marks[i] ?? '';
  }

  /**
   * @param place of a performed bar
   * @param take whose curves are drawn there; null for none
   * @param notPlayed said where the bar was not played
   */
  showCurve(place: number, take: TakeData | null, notPlayed: string): void {
    const barIndex = this.#bars[place]?.[1] ?? 0;
    const [line = 0, left = 0, right = 0] = this.#layout.bars[barIndex] ?? [];
    const box = this.#layout.lines[line];
    const group = this.#curves[barIndex];
    if (group === undefined || box === undefined) return;
    const across = { left, right, way: this.#ways[place] ?? [] };
    group.innerHTML = take === null ? '' : drawBar(take, this.#bars, place, across, box, notPlayed);
  }

  /**
   * @param place of the performed bar the music is in
   * @param quarters where it is
   * @returns the line that came to be the one with the music, when it is another than before
   */
  showHead(place: number, quarters: number): HTMLElement | null {
    const barIndex = this.#bars[place]?.[1] ?? 0;
    const number = this.#layout.bars[barIndex]?.[0] ?? 0;
    const [line, box] = [this.#lines[number], this.#layout.lines[number]];
    if (line === undefined || box === undefined) return null;
    const way = this.#ways[place] ?? [];
    const still = STILL.matches ? way.findLast(([at]) => at <= quarters + 1e-6) : undefined;
    const x = still?.[1] ?? alongKnots(way, quarters);
    for (const [name, value] of [
      ['x1', x],
      ['x2', x],
      ['y1', box.top],
      ['y2', box.top + box.height],
    ] as const)
      line.head.setAttribute(name, value.toFixed(2));
    line.head.setAttribute('visibility', 'visible');
    if (this.#lit === line) return null;
    this.#lit?.head.setAttribute('visibility', 'hidden');
    this.#lit = line;
    return line.home;
  }

  /** No line follows the music. */
  hideHead(): void {
    this.#lit?.head.setAttribute('visibility', 'hidden');
    this.#lit = null;
  }
}

function lineOf(home: HTMLElement): Line {
  const picture = home.querySelector('svg');
  const marks = document.createElementNS(SVG, 'g');
  const head = document.createElementNS(SVG, 'line');
  marks.setAttribute('class', 'marks');
  head.setAttribute('class', 'playhead');
  head.setAttribute('visibility', 'hidden');
  picture?.append(marks, head);
  return { home, marks, head };
}

/** Through a bar the line goes from head to head; what comes before the first one belongs to the bar's beginning. */
function waysOf({ bars, onsets }: PartData, { bars: boxes, heads }: LayoutData): Knots[] {
  let next = 0;
  return bars.map(([, barIndex, , start, length]) => {
    const [, left = 0, right = 0] = boxes[barIndex] ?? [];
    const end = start + length;
    const knots: [number, number][] = [];
    while (next < onsets.length && (onsets[next] as number) < start - 1e-6) next += 1;
    for (; next < onsets.length && (onsets[next] as number) < end - 1e-6; next++) {
      const [quarters, x] = [onsets[next] as number, heads[next] ?? null];
      const last = knots.at(-1);
      // of notes at one time the last is the one that is not grace
      if (x !== null && last?.[0] === quarters) last[1] = x;
      else if (x !== null && x > (last?.[1] ?? left)) knots.push([quarters, x]);
    }
    if ((knots[0]?.[0] ?? end) > start + 1e-6) knots.unshift([start, Math.min(knots[0]?.[1] ?? left, left)]);
    return [...knots, [end, right]];
  });
}
