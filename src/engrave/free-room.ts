import { type Item, type PathItem, type Point, pointsAlong, type TextItem, type Typesetter } from '../page/index.js';

/** Points a step of the outline. */
const STEP = 1;
/** Room to the left of the origin that is looked at, points. */
const BEFORE = 20;
/** White between what is drawn and what is placed beside it, points. */
const WHITE = 1.8;
/** How far letters reach above and below their baseline, shares of their size. */
export const TEXT_REACH = { up: 0.74, down: 0.22 };
/** Metronome notes and dynamics of the music face. Source: SMuFL 1.4, metadata of Bravura (bounding boxes), rounded up. */
const SIGN_REACH = { up: 0.8, down: 0.2 };

/**
 * The outline of what is drawn, seen from above and from below: where a pencil mark can stand without touching anything.
 * What is placed becomes part of the outline.
 */
export class FreeRoom {
  readonly #typesetter: Typesetter;
  readonly #above: Float64Array;
  readonly #below: Float64Array;
  readonly #middle: number;

  /**
   * @param typesetter widths of the faces
   * @param items what is drawn
   * @param width points from the origin to the right end
   * @param middle height that stands where nothing is drawn, e.g. the middle line of the staff
   */
  constructor(typesetter: Typesetter, items: readonly Item[], width: number, middle: number) {
    const steps = Math.ceil((width + 2 * BEFORE) / STEP);
    this.#typesetter = typesetter;
    this.#middle = middle;
    this.#above = new Float64Array(steps).fill(Number.POSITIVE_INFINITY);
    this.#below = new Float64Array(steps).fill(Number.NEGATIVE_INFINITY);
    this.take(items);
  }

  /** Uppermost and lowest point of everything drawn. */
  get extent(): readonly [top: number, bottom: number] {
    const top = this.#above.reduce((a, b) => Math.min(a, b));
    const bottom = this.#below.reduce((a, b) => Math.max(a, b));
    return Number.isFinite(top) ? [top, bottom] : [this.#middle, this.#middle];
  }

  /** How far what is drawn from x to x reaches up and down; the middle counts as drawn. */
  edges(fromX: number, toX: number): readonly [top: number, bottom: number] {
    const [from, to] = this.#steps(fromX, toX);
    let [top, bottom] = [this.#middle, this.#middle];
    for (let i = from; i <= to; i++) {
      top = Math.min(top, this.#above[i] as number);
      bottom = Math.max(bottom, this.#below[i] as number);
    }
    return [top, bottom];
  }

  /** Takes a strip of this height as low as it can lie above everything from x to x; gives its upper edge. */
  above(fromX: number, toX: number, height: number): number {
    const top = this.edges(fromX, toX)[0] - WHITE - height;
    this.#mark(fromX, toX, top);
    return top;
  }

  /** Takes a strip of this height as high as it can lie below everything from x to x; gives its upper edge. */
  below(fromX: number, toX: number, height: number): number {
    const top = this.edges(fromX, toX)[1] + WHITE;
    this.#mark(fromX, toX, top + height);
    return top;
  }

  /** Adds what was drawn where it had to be, whatever stands there. */
  take(items: readonly Item[]): void {
    for (const item of items) {
      if (item.kind === 'text') this.#takeText(item);
      else this.#takePath(item);
    }
  }

  #takeText({ text, face, size, x, baseline }: TextItem): void {
    const reach = face === 'music' ? SIGN_REACH : TEXT_REACH;
    const right = x + this.#typesetter.widthOf(text.trimEnd(), face, size);
    this.#mark(x, right, baseline - reach.up * size);
    this.#mark(x, right, baseline + reach.down * size);
  }

  #takePath({ path, stroke, width }: PathItem): void {
    const half = stroke === undefined ? 0 : (width ?? 0.5) / 2;
    for (const points of pointsAlong(path)) {
      for (let i = 1; i < points.length; i++) {
        const [x0, y0] = points[i - 1] as Point;
        const [x1, y1] = points[i] as Point;
        this.#markLine(x0, y0, x1, y1, half);
      }
    }
  }

  #markLine(x0: number, y0: number, x1: number, y1: number, half: number): void {
    const steps = Math.max(1, Math.ceil(Math.abs(x1 - x0) / STEP));
    for (let i = 0; i <= steps; i++) {
      const [x, y] = [x0 + ((x1 - x0) * i) / steps, y0 + ((y1 - y0) * i) / steps];
      this.#mark(x - half, x + half, y - half);
      this.#mark(x - half, x + half, y + half);
    }
  }

  #mark(fromX: number, toX: number, y: number): void {
    const [from, to] = this.#steps(fromX, toX);
    for (let i = from; i <= to; i++) {
      this.#above[i] = Math.min(this.#above[i] as number, y);
      this.#below[i] = Math.max(this.#below[i] as number, y);
    }
  }

  #steps(fromX: number, toX: number): [number, number] {
    const step = (x: number) => Math.min(this.#above.length - 1, Math.max(0, Math.floor((x + BEFORE) / STEP)));
    return [step(Math.min(fromX, toX)), step(Math.max(fromX, toX))];
  }
}
