/** A sound that can be heard: its element, and the promise that it is ready to be. */
interface Slot {
  readonly element: HTMLAudioElement;
  sound: string | null;
  /** an address of a copy in memory, to be given back */
  copy: string | null;
  ready: Promise<HTMLAudioElement>;
  fetching: AbortController | null;
}

/**
 * Two elements that sounds are heard from, and never more, however many takes there are: one plays, one gets ready.
 *
 * A page from a server fetches a sound whole before it is heard, because not every server can begin in the middle; one from
 * a disk lets the element open the file.
 */
export class Deck {
  readonly #slots: readonly Slot[];

  /** @param home where the elements stand in the document */
  constructor(home: HTMLElement) {
    this.#slots = [0, 1].map(() => {
      const element = document.createElement('audio');
      element.preload = 'auto';
      element.preservesPitch = true;
      home.append(element);
      return { element, sound: null, copy: null, ready: Promise.resolve(element), fetching: null };
    });
    // WebKit lets an element sound only after a gesture has touched it (from memory)
    const touch = (): void => {
      for (const { element, sound } of this.#slots) if (sound === null) element.load();
    };
    for (const gesture of ['pointerdown', 'keydown']) document.addEventListener(gesture, touch, { once: true });
  }

  /**
   * @param sound address of a file
   * @param busy an element that must go on with what it has
   * @returns the element with the sound in it, when it is ready to be heard
   * @throws when the file cannot be had or is no sound
   */
  open(sound: string, busy: HTMLAudioElement | null): Promise<HTMLAudioElement> {
    const known = this.#slots.find((slot) => slot.sound === sound && slot.element !== busy);
    if (known !== undefined) return known.ready;
    const free = this.#slots.find(({ element }) => element !== busy && element.paused) ?? (this.#slots[0] as Slot);
    this.#empty(free);
    free.sound = sound;
    free.ready = this.#fill(free, sound);
    free.ready.catch(() => {
      if (free.sound === sound) free.sound = null;
    });
    return free.ready;
  }

  async #fill(slot: Slot, sound: string): Promise<HTMLAudioElement> {
    const { element } = slot;
    if (location.protocol === 'file:') element.src = sound;
    else {
      const fetching = new AbortController();
      slot.fetching = fetching;
      const answer = await fetch(sound, { signal: fetching.signal });
      if (!answer.ok) throw new Error(sound);
      const copy = URL.createObjectURL(await answer.blob());
      if (slot.sound !== sound) {
        URL.revokeObjectURL(copy);
        throw new Error(sound);
      }
      slot.copy = copy;
      element.src = copy;
    }
    await once(element, 'loadeddata');
    return element;
  }

  #empty(slot: Slot): void {
    slot.fetching?.abort();
    slot.fetching = null;
    slot.element.pause();
    if (slot.copy !== null) URL.revokeObjectURL(slot.copy);
    slot.copy = null;
    slot.sound = null;
  }
}

/**
 * @param element that will tell
 * @param event it tells
 * @param faults of which any means that it never will
 * @returns when it has; fails at the first fault
 */
export function once(element: HTMLMediaElement, event: string, faults = ['error']): Promise<void> {
  return new Promise((resolve, reject) => {
    const done = new AbortController();
    const end = (how: () => void) => () => {
      done.abort();
      how();
    };
    element.addEventListener(event, end(resolve), { signal: done.signal });
    for (const fault of faults) {
      element.addEventListener(
        fault,
        end(() => reject(new Error(fault))),
        { signal: done.signal },
      );
    }
  });
}
