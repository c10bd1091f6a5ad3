import type { PartData, WrittenNote } from '../room-data.js';
import { againstKnots, alongKnots } from './clock.js';
import type { Selection } from './selection.js';

/** What the model is to play. */
export interface Model {
  readonly part: PartData;
  readonly bars: Selection;
  readonly rate: number;
  /** a click on each beat */
  readonly click: boolean;
  /** the bars are left empty for whoever plays now, after a bar of clicks */
  readonly yourTurn: boolean;
  readonly ended: () => void;
}

/** So far ahead notes are handed to the browser, and so often it is looked at. */
const AHEAD_SECONDS = 1.6;
const LOOK_MS = 300;
const START_SECONDS = 0.12;
const TAIL_SECONDS = 0.15;
const ATTACK_SECONDS = 0.012;
const RELEASE_SECONDS = 0.03;
/** Level of mezzo-forte, a share of full scale; of a click. */
const MEZZO_FORTE = 0.16;
const CLICK = 0.25;
const CLICK_HZ = 1500;
const FIRST_CLICK_HZ = 2000;
const CLICK_SECONDS = 0.03;
/** Shares of the first partials: plain enough to be nobody's tone. */
const PARTIALS = [0, 1, 0.42, 0.24, 0.1, 0.06];

interface Event {
  /** from the beginning of the first bar, milliseconds as written */
  readonly atMs: number;
  readonly sound: (at: number) => void;
}

/** Plays bars of the part as they are written: a model of notes and time, not of tone. */
export class ModelPlayer {
  #context: AudioContext | null = null;
  #out: GainNode | null = null;
  #start = 0;
  #model: Model | null = null;
  #fromMs = 0;
  #timer = 0;

  /** Where the model stands in the part, quarters, before the first bar while it counts in; null while it is silent. */
  get quarters(): number | null {
    const model = this.#model;
    if (model === null || this.#context === null) return null;
    const late = this.#context.outputLatency || 0;
    const ms = (this.#context.currentTime - late - this.#start) * 1000 * model.rate;
    return ms < 0 ? Number.NEGATIVE_INFINITY : againstKnots(model.part.written.clock, this.#fromMs + ms);
  }

  /** Plays; what the model was playing ends. */
  async play(model: Model): Promise<void> {
    this.stop();
    this.#context ??= new AudioContext();
    const context = this.#context;
    this.#model = model;
    await context.resume();
    if (this.#model !== model) return;
    const { part, bars } = model;
    const { clock } = part.written;
    const [fromMs, toMs] = [startMs(part, bars.from), endMs(part, bars.to)];
    this.#fromMs = fromMs;
    const out = new GainNode(context);
    out.connect(context.destination);
    this.#out = out;
    const count = model.yourTurn ? countIn(part, bars.from) : [];
    const before = Math.max(0, ...count.map(({ atMs }) => -atMs));
    const wave = new PeriodicWave(context, {
      real: new Float32Array(PARTIALS.length),
      imag: Float32Array.from(PARTIALS),
    });
    const notes = model.yourTurn ? [] : part.written.notes.filter(([onset]) => onset >= fromMs - 1 && onset < toMs - 1);
    const clicks = model.click ? clicksIn(part, bars).map((one) => ({ ...one, atMs: one.atMs - fromMs })) : [];
    const events: Event[] = [
      ...notes.map((note) => ({
        atMs: note[0] - fromMs,
        sound: (at: number) => tone(out, wave, note, at, model.rate),
      })),
      ...[...count, ...clicks].map(({ atMs, first }) => ({ atMs, sound: (at: number) => tick(out, first, at) })),
    ].sort((a, b) => a.atMs - b.atMs);
    this.#start = context.currentTime + START_SECONDS + before / 1000 / model.rate;
    const end = this.#start + (alongKnots(clock, endQuarters(part, bars.to)) - fromMs) / 1000 / model.rate;
    this.#schedule(model, events, 0, end);
  }

  /** Ends what the model plays. */
  stop(): void {
    clearTimeout(this.#timer);
    this.#model = null;
    const out = this.#out;
    this.#out = null;
    if (out === null) return;
    out.gain.setTargetAtTime(0, out.context.currentTime, 0.01);
    setTimeout(() => out.disconnect(), 100);
  }

  #schedule(model: Model, events: readonly Event[], next: number, end: number): void {
    const context = this.#context;
    if (context === null || this.#model !== model) return;
    const now = context.currentTime;
    let i = next;
    for (; i < events.length; i++) {
      const { atMs, sound } = events[i] as Event;
      const at = this.#start + atMs / 1000 / model.rate;
      if (at > now + AHEAD_SECONDS) break;
      sound(Math.max(at, now));
    }
    const left = end + (model.yourTurn ? 0 : TAIL_SECONDS) - now;
    if (left <= 0) {
      this.stop();
      model.ended();
      return;
    }
    this.#timer = setTimeout(() => this.#schedule(model, events, i, end), Math.min(LOOK_MS, left * 1000));
  }
}

function tone(out: AudioNode, wave: PeriodicWave, note: WrittenNote, at: number, rate: number): void {
  const [, lengthMs, midi, levelTenths, legato] = note;
  const { context } = out;
  // Source: twelve equal steps an octave from A4 = 440 Hz (ISO 16).
  const oscillator = new OscillatorNode(context, { frequency: 440 * 2 ** ((midi - 69) / 12), periodicWave: wave });
  const gain = new GainNode(context, { gain: 0 });
  const peak = Math.min(0.9, MEZZO_FORTE * 10 ** (levelTenths / 200));
  const end = at + lengthMs / 1000 / rate;
  const release = legato === 1 ? ATTACK_SECONDS : RELEASE_SECONDS;
  gain.gain.setValueAtTime(0, at);
  gain.gain.linearRampToValueAtTime(peak, at + ATTACK_SECONDS);
  gain.gain.setValueAtTime(peak, Math.max(at + ATTACK_SECONDS, end - (legato === 1 ? 0 : release)));
  gain.gain.linearRampToValueAtTime(0, Math.max(at + 2 * ATTACK_SECONDS, end + (legato === 1 ? release : 0)));
  oscillator.connect(gain).connect(out);
  oscillator.start(at);
  oscillator.stop(end + 0.05);
  oscillator.onended = () => gain.disconnect();
}

function tick(out: AudioNode, first: boolean, at: number): void {
  const { context } = out;
  const oscillator = new OscillatorNode(context, { frequency: first ? FIRST_CLICK_HZ : CLICK_HZ });
  const gain = new GainNode(context, { gain: 0 });
  gain.gain.setValueAtTime(CLICK, at);
  gain.gain.exponentialRampToValueAtTime(0.001, at + CLICK_SECONDS);
  oscillator.connect(gain).connect(out);
  oscillator.start(at);
  oscillator.stop(at + CLICK_SECONDS);
  oscillator.onended = () => gain.disconnect();
}

/** One click, milliseconds as written, and whether it is the first of its bar. */
interface Click {
  readonly atMs: number;
  readonly first: boolean;
}

/** Beats are counted back from the end of a bar, so that those of a pick-up stand where they belong. */
function clicksIn({ bars, written }: PartData, { from, to }: Selection): Click[] {
  return bars.slice(from, to + 1).flatMap(([, , , start, length, beat]) => {
    const count = Math.floor(length / beat + 0.001);
    const begin = start + length - count * beat;
    return Array.from({ length: count }, (_, i) => ({
      atMs: alongKnots(written.clock, begin + i * beat),
      first: i === 0 && begin - start < 0.001,
    }));
  });
}

/** A whole bar of clicks, and what is missing of a short first bar; negative milliseconds. */
function countIn({ bars, written }: PartData, from: number): Click[] {
  const [, , , start = 0, length = 4, beat = 1] = bars[from] ?? [];
  const whole = Math.max(length, bars[from + 1]?.[4] ?? length);
  const aBeatMs = alongKnots(written.clock, start + Math.min(beat, length)) - alongKnots(written.clock, start);
  const beatMs = aBeatMs * (beat / Math.min(beat, length));
  const count = Math.max(1, Math.round((whole + (whole - length)) / beat));
  const aBar = Math.max(1, Math.round(whole / beat));
  return Array.from({ length: count }, (_, i) => ({ atMs: (i - count) * beatMs, first: i % aBar === 0 }));
}

const endQuarters = ({ bars }: PartData, place: number): number => (bars[place]?.[3] ?? 0) + (bars[place]?.[4] ?? 0);

const startMs = (part: PartData, place: number): number => alongKnots(part.written.clock, part.bars[place]?.[3] ?? 0);

const endMs = (part: PartData, place: number): number => alongKnots(part.written.clock, endQuarters(part, place));
