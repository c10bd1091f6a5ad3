import { type Deck, once } from './deck.js';

/** A piece of a sound. */
export interface Stretch {
  readonly sound: string;
  readonly fromMs: number;
  readonly toMs: number;
  /** from 0 to 1 */
  readonly volume: number;
}

/** What is to happen around a stretch. */
export interface Asked {
  /** begins again at its end; asked each time */
  readonly loops: () => boolean;
  readonly ended: () => void;
  readonly failed: () => void;
}

interface Playing {
  readonly element: HTMLAudioElement;
  readonly stretch: Stretch;
  readonly asked: Asked;
}

/** The longest time between two looks at the clock, and what counts as the end. */
const LOOK_MS = 150;
const END_MS = 4;
/** How long another sound takes to begin, about: it begins so much later in the music. */
const LEAD_MS = 40;

/** Plays one stretch of one sound at a time. */
export class Player {
  readonly #deck: Deck;
  #playing: Playing | null = null;
  #rate = 1;
  /** something is about to sound */
  #isComing = false;
  /** counts what was asked for, so that what comes late is passed over */
  #turn = 0;

  /** @param deck the elements to play from */
  constructor(deck: Deck) {
    this.#deck = deck;
  }

  /** Where the sound stands, milliseconds; null while nothing sounds. */
  get positionMs(): number | null {
    return this.#playing === null ? null : this.#playing.element.currentTime * 1000;
  }

  /** @param rate 1 as recorded, 0.5 half as fast; the pitch stays */
  set rate(rate: number) {
    this.#rate = rate;
    if (this.#playing !== null) this.#playing.element.playbackRate = rate;
  }

  /** @param volume from 0 to 1, of what is heard now */
  set volume(volume: number) {
    if (this.#playing !== null) this.#playing.element.volume = volume;
  }

  /** Plays a stretch from its beginning; what was playing ends. */
  async play(stretch: Stretch, asked: Asked): Promise<void> {
    this.stop();
    await this.#begin(this.#turn, stretch, asked, null, () => stretch.fromMs);
  }

  /**
   * Goes on with another sound at the place that belongs to the one where the music is; the first goes on until then.
   *
   * @param stretch of the other sound
   * @param asked what is to happen around it
   * @param placeOf where the other sound is to go on, from where this one is; both milliseconds
   */
  async change(stretch: Stretch, asked: Asked, placeOf: (positionMs: number) => number): Promise<void> {
    const before = this.#playing;
    if (before === null) return this.play(stretch, asked);
    this.#turn += 1;
    const lead = LEAD_MS * this.#rate;
    await this.#begin(this.#turn, stretch, asked, before.element, () =>
      placeOf(before.element.currentTime * 1000 + lead),
    );
  }

  /** Gets a sound ready at a place, so that it begins without waiting. */
  prepare(sound: string, atMs: number): void {
    // what is asked for goes before what may be asked for
    if (this.#isComing) return;
    const busy = this.#playing?.element ?? null;
    this.#deck.open(sound, busy).then(
      (element) => {
        if (element.paused && element !== this.#playing?.element) element.currentTime = atMs / 1000;
      },
      () => {},
    );
  }

  /** Ends what is heard. */
  stop(): void {
    this.#turn += 1;
    this.#isComing = false;
    this.#playing?.element.pause();
    this.#playing = null;
  }

  async #begin(
    turn: number,
    stretch: Stretch,
    asked: Asked,
    before: HTMLAudioElement | null,
    placeOf: () => number,
  ): Promise<void> {
    this.#isComing = true;
    try {
      const element = await this.#deck.open(stretch.sound, before);
      if (turn !== this.#turn) return;
      element.volume = stretch.volume;
      element.preservesPitch = true;
      await seek(element, placeOf());
      if (turn !== this.#turn) return;
      element.playbackRate = this.#rate;
      await element.play();
      if (turn !== this.#turn) {
        if (element !== this.#playing?.element) element.pause();
        return;
      }
      before?.pause();
      this.#playing = { element, stretch, asked };
      this.#isComing = false;
      this.#look(turn);
    } catch {
      if (turn !== this.#turn) return;
      this.stop();
      asked.failed();
    }
  }

  /** Looks at the clock until the stretch ends. */
  #look(turn: number): void {
    const playing = this.#playing;
    if (turn !== this.#turn || playing === null) return;
    const { element, stretch, asked } = playing;
    const left = stretch.toMs - element.currentTime * 1000;
    if (left > END_MS && !element.ended) {
      setTimeout(() => this.#look(turn), Math.min(LOOK_MS, left / element.playbackRate));
      return;
    }
    if (asked.loops()) {
      element.currentTime = stretch.fromMs / 1000;
      const again = element.paused ? element.play() : once(element, 'seeked');
      again.then(
        () => this.#look(turn),
        () => {},
      );
      return;
    }
    this.stop();
    asked.ended();
  }
}

async function seek(element: HTMLAudioElement, ms: number): Promise<void> {
  if (Math.abs(element.currentTime * 1000 - ms) < 1) return;
  const there = once(element, 'seeked', ['error', 'emptied']);
  element.currentTime = ms / 1000;
  await there;
}
