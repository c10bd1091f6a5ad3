import type { TakeData } from '../room-data.js';
import { againstKnots, alongKnots } from './clock.js';
import { fill } from './fill.js';
import { gatedLoudness } from './loudness.js';
import type { ModelPlayer } from './model.js';
import { orderOf } from './order.js';
import type { Asked, Player, Stretch } from './player.js';
import type { Room } from './room.js';
import { barsInWords, tell } from './say.js';
import type { Selection } from './selection.js';

/** Heard before the first bar, so that its first tone is whole, and after the last one where nothing follows. */
const BEFORE_MS = 60;
const AFTER_MS = 250;
const PAUSE_MS = 400;

/** What can be heard: the take, the model, or both in turn. One thing sounds at a time. */
export class Listening {
  readonly #room: Room;
  readonly #player: Player;
  readonly #model: ModelPlayer;
  /** loudness of the takes in the bars chosen, LUFS; measured when it is asked for */
  #measured = { key: '', loudness: new Map<number, number | null>() };
  #waiting = 0;
  /** plays what the model played last */
  #again = (): void => {};

  /**
   * @param room all that is known
   * @param player of takes
   * @param model of the part as written
   */
  constructor(room: Room, player: Player, model: ModelPlayer) {
    this.#room = room;
    this.#player = player;
    this.#model = model;
  }

  /** Where the music is, quarters; null when there is none to follow. */
  get quarters(): number | null {
    const { heard } = this.#room.state;
    if (heard === null) return null;
    const [first, last] = [this.#room.part?.bars[heard.bars.from], this.#room.part?.bars[heard.bars.to]];
    const start = first?.[3] ?? 0;
    const end = (last?.[3] ?? 0) + (last?.[4] ?? 0) - 0.001;
    if (heard.what !== 'take') {
      const at = this.#model.quarters;
      return at === null || at === Number.NEGATIVE_INFINITY ? null : Math.min(at, end);
    }
    const [at, take] = [this.#player.positionMs, this.#room.take];
    if (at === null || take === null) return null;
    return Math.min(end, Math.max(start, alongKnots(take.clock, at)));
  }

  /**
   * Plays the bars chosen of the take chosen.
   *
   * @param ended what comes after them; nothing when they loop
   */
  hear(ended?: () => void): void {
    this.hearBars(this.#room.state.bars, ended);
  }

  /**
   * @param bars of the take chosen
   * @param ended what comes after them
   */
  hearBars(bars: Selection, ended?: () => void): void {
    const { state, take, data } = this.#room;
    if (this.#room.part === null) return;
    const stretch = this.stretchOf(state.take, bars);
    if (stretch === null) {
      this.stop();
      tell(
        take === null || this.#room.head?.sound === null
          ? data.words.noSound
          : fill(data.words.notPlayedIn, { bars: barsInWords(this.#room, bars) }),
      );
      if (ended !== undefined) this.#after(ended);
      return;
    }
    tell('');
    this.#play(stretch, bars, ended);
  }

  /** Plays a piece of the take chosen, by its milliseconds. */
  hearPassage([fromMs, toMs]: readonly [number, number], bars: Selection): void {
    const sound = this.#room.head?.sound ?? null;
    if (sound === null) return;
    this.#play({ sound, fromMs, toMs, volume: this.volumeOf(this.#room.state.take) }, bars);
  }

  /**
   * Plays the bars as they are written.
   *
   * @param options with a click on each beat; left empty for whoever plays now
   * @param ended what comes after them
   */
  playModel(options: { readonly click: boolean; readonly yourTurn: boolean }, ended?: () => void): void {
    const { part, state, data } = this.#room;
    if (part === null) return;
    this.stop();
    this.#again = () => this.playModel(options, ended);
    const bars = state.bars;
    const again = (): void => {
      if (ended !== undefined) ended();
      else if (this.#room.state.loop) this.playModel(options);
      else this.stop();
    };
    this.#room.set({ heard: { what: options.yourTurn ? 'turn' : 'written', bars } });
    tell(fill(options.yourTurn ? data.words.yourTurn : data.words.written, { bars: barsInWords(this.#room, bars) }));
    this.#model.play({ part, bars, rate: state.rate, ...options, ended: again });
  }

  /** The model begins again, at the speed that is chosen now. */
  playModelAgain(): void {
    this.#again();
  }

  /** First as written, then as played, then the bars are left empty. */
  inTurn(click: boolean): void {
    this.playModel({ click, yourTurn: false }, () =>
      this.#after(() => this.hear(() => this.#after(() => this.playModel({ click: true, yourTurn: true })))),
    );
  }

  /**
   * Goes on with another take at the place where the music is; begins it when there is no music.
   *
   * @param take place of the other take in the room
   */
  change(take: number): void {
    const { state } = this.#room;
    const [here, there] = [this.#room.take, this.#room.takeData(take)];
    const bars = state.heard?.bars ?? state.bars;
    const stretch = this.stretchOf(take, bars);
    if (state.heard?.what !== 'take' || here === null || there === null || stretch === null) {
      this.#room.set({ take });
      this.hear();
      return;
    }
    const asked = this.#asked();
    this.#player
      .change(stretch, asked, (at) => againstKnots(there.clock, alongKnots(here.clock, at)))
      .then(() => {
        if (this.#room.state.heard !== null) this.#room.set({ take });
      });
  }

  /** Silence. */
  stop(): void {
    clearTimeout(this.#waiting);
    this.#player.stop();
    this.#model.stop();
    tell('');
    if (this.#room.state.heard !== null) this.#room.set({ heard: null });
  }

  /** Gets a take ready at the bars chosen, so that it begins without waiting. */
  prepare(take: number): void {
    const stretch = this.stretchOf(take, this.#room.state.bars);
    if (stretch !== null) this.#player.prepare(stretch.sound, stretch.fromMs);
  }

  /**
   * @param number of a take
   * @param bars of it
   * @returns the piece of its sound in which they are played; null where none of them is
   */
  stretchOf(number: number, bars: Selection): Stretch | null {
    const sound = this.#room.data.takes[number]?.sound ?? null;
    const take = this.#room.takeData(number);
    const span = take === null ? null : spanOf(take, bars);
    if (sound === null || span === null) return null;
    return { sound, ...span, volume: this.volumeOf(number) };
  }

  /**
   * @param number of a take
   * @returns what it is turned down by, dB, to be as soft in the bars chosen as the softest of the takes compared
   */
  softerDb(number: number): number {
    const { state, data } = this.#room;
    if (state.way === 'take' || !state.matched) return 0;
    const part = data.takes[number]?.part ?? null;
    const others = state.way === 'days' ? state.pair : orderOf(data.takes, part, 'list', []);
    const key = `${part} ${state.bars.from} ${state.bars.to} ${others}`;
    if (this.#measured.key !== key) {
      const loudness = others.map((one) => [one, this.#loudnessOf(one)] as const);
      this.#measured = { key, loudness: new Map(loudness) };
    }
    const own = this.#measured.loudness.get(number) ?? null;
    const all = [...this.#measured.loudness.values()].filter((one) => one !== null);
    return own === null ? 0 : Math.max(0, own - Math.min(...all));
  }

  /** @returns what the loudness of a take is turned down to, from 0 to 1 */
  volumeOf(number: number): number {
    return 10 ** (-this.softerDb(number) / 20);
  }

  #loudnessOf(number: number): number | null {
    const take = this.#room.takeData(number);
    const span = take === null ? null : spanOf(take, this.#room.state.bars);
    return take === null || span === null ? null : gatedLoudness(take.kWeighted, span.fromMs, span.toMs);
  }

  #play(stretch: Stretch, bars: Selection, ended?: () => void): void {
    clearTimeout(this.#waiting);
    this.#model.stop();
    this.#room.set({ heard: { what: 'take', bars } });
    this.#player.play(stretch, this.#asked(ended));
  }

  #asked(ended?: () => void): Asked {
    return {
      loops: () => ended === undefined && this.#room.state.loop,
      ended: () => {
        if (ended === undefined) this.stop();
        else ended();
      },
      failed: () => {
        this.stop();
        tell(this.#room.data.words.cannotPlay);
      },
    };
  }

  #after(next: () => void): void {
    clearTimeout(this.#waiting);
    this.#waiting = setTimeout(next, PAUSE_MS);
  }
}

/** From the first bar that was played to the last one. */
function spanOf(
  { bars }: TakeData,
  { from, to }: Selection,
): { readonly fromMs: number; readonly toMs: number } | null {
  const played = bars.slice(from, to + 1).filter((bar) => bar !== null);
  const [first, last] = [played[0], played.at(-1)];
  if (first === undefined || last === undefined) return null;
  const follows = bars.slice(to + 1).some((bar) => bar !== null && bar[0] - last[1] < AFTER_MS && bar[0] >= last[1]);
  return { fromMs: Math.max(0, first[0] - BEFORE_MS), toMs: last[1] + (follows ? 0 : AFTER_MS) };
}
