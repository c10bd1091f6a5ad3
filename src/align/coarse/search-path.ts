import type { SearchPlan } from './plan-search.js';
import type { PooledGrid } from './pool-grid.js';

/** Prices in units of one average note's matched time. */
const JUMP_PRICE = 3;
const FAR_JUMP_PRICE = 0.25;
/** After a silence of so many seconds and average notes a player often begins again: then a jump costs less. */
export const SILENCE_SECONDS = 0.8;
const SILENCE_NOTES = 2;
const JUMP_PRICE_AFTER_SILENCE = 0.6;
/** A note does not go on after such a silence: it begins anew. */
const RESUMED_NOTE_PRICE = 2;
const MISSED_PRICE = 0.7;
const MOST_MISSED = 3;
/** Price a unit of time: sound before the first or after the last note, at most so much in all, and silence inside. */
const OUTSIDE_SOUND_PRICE = 0.15;
const MOST_OUTSIDE_PRICE = 1.5;
const INSIDE_SILENCE_PRICE = 0.1;
/** Going on to the next note after such a silence, when the note before it was cut off below this share of its worth. */
const BROKEN_NOTE_PRICE = 0.8;
const BROKEN_SHARE = 0.45;

/** Far more than a sum of prices can be off by rounding. */
const ROUNDING = 1e-12;

/** How a state was reached: from itself, by a jump, from before the part, or (1 …) from so many notes before. */
export const STAY = 0;
export const JUMP = 255;
export const ENTER = 254;

/** What the search leaves behind for the way back. */
export interface SearchResult {
  /** step-major: STAY, 1 … MOST_MISSED + 1 notes ahead, ENTER from before the part, JUMP */
  readonly back: Uint8Array;
  /** best state to jump from, a step */
  readonly jumpFrom: Int32Array;
  /** step after which the part is over, and its last state; -1 when it never begins */
  readonly lastStep: number;
  readonly lastState: number;
}

/**
 * @param pooled evidence a step
 * @param plan what is expected
 * @returns the best way into every state at every step, and the best end
 *
 * Source: Viterbi search (Rabiner 1989); jumps leave from the one best state of a step, so time and memory grow with
 * steps × notes.
 */
export function searchPath(pooled: PooledGrid, plan: SearchPlan): SearchResult {
  const search = new PathSearch(pooled, plan);
  for (let step = 0; step < pooled.steps; step++) search.advance(step);
  const { back, jumpFrom, lastStep, lastState } = search;
  return { back, jumpFrom, lastStep, lastState };
}

class PathSearch implements SearchResult {
  readonly back: Uint8Array;
  readonly jumpFrom: Int32Array;
  lastStep = -1;
  lastState = -1;
  private best = Number.NEGATIVE_INFINITY;
  private readonly pooled: PooledGrid;
  private readonly plan: SearchPlan;
  private before: Float64Array;
  private now: Float64Array;
  /** sounding steps spent in each state so far */
  private heardBefore: Float64Array;
  private heard: Float64Array;
  private readonly soundAfter: Float64Array;
  private readonly enterPrice: Float64Array;
  private readonly leavePrice: Float64Array;
  private readonly farPrice: Float64Array;
  private readonly longSilence: number;
  /** best state of the step before */
  private from = 0;
  private entry = 0;
  /** steps of silence so far */
  private silent = 0;

  constructor(pooled: PooledGrid, plan: SearchPlan) {
    const { steps, voicing } = pooled;
    const { pitchOf, unit, entryPrice } = plan;
    const count = pitchOf.length;
    this.pooled = pooled;
    this.plan = plan;
    this.back = new Uint8Array(steps * count);
    this.jumpFrom = new Int32Array(steps).fill(-1);
    this.before = new Float64Array(count).fill(Number.NEGATIVE_INFINITY);
    this.now = new Float64Array(count);
    this.heardBefore = new Float64Array(count);
    this.heard = new Float64Array(count);
    this.soundAfter = new Float64Array(steps + 1);
    for (let s = steps - 1; s >= 0; s--) this.soundAfter[s] = this.soundAfter[s + 1]! + voicing[s]!;
    this.enterPrice = Float64Array.from(entryPrice, (price, i) => Math.min(JUMP_PRICE + price, i * MISSED_PRICE));
    this.leavePrice = Float64Array.from(pitchOf, (_, i) => Math.min(JUMP_PRICE, (count - 1 - i) * MISSED_PRICE));
    this.farPrice = Float64Array.from(pitchOf, (_, away) => FAR_JUMP_PRICE * Math.log2(1 + away));
    this.longSilence = Math.max(SILENCE_SECONDS / pooled.stepSeconds, SILENCE_NOTES / unit);
  }

  /** The best way into every state at one step; a method of its own, so that it is compiled for speed early. */
  advance(s: number): void {
    const { before, now, heardBefore, heard, back, enterPrice, leavePrice, farPrice, from, entry } = this;
    const { pitches, salience, voicing } = this.pooled;
    const { pitchOf, unit, mostSteps, leastSteps, entryPrice, afterRest } = this.plan;
    const count = pitchOf.length;
    const top = before[from]!;
    this.jumpFrom[s] = from;
    const voiced = voicing[s]!;
    const silence = (1 - voiced) * INSIDE_SILENCE_PRICE;
    const afterSilence = this.silent >= this.longSilence;
    const jumpPrice = afterSilence ? JUMP_PRICE_AFTER_SILENCE : JUMP_PRICE;
    const resumed = afterSilence && voiced >= 0.5;
    this.silent = voiced < 0.5 ? this.silent + 1 : 0;
    const tail = Math.min(MOST_OUTSIDE_PRICE, unit * OUTSIDE_SOUND_PRICE * this.soundAfter[s + 1]!);
    let mostNow = Number.NEGATIVE_INFINITY;
    let mostAt = 0;
    /** no way ahead from a state before this one is worth more */
    let mostAhead = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < count; i++) {
      const unexpected = resumed && !afterRest[i];
      let value =
        before[i]! - (resumed && heardBefore[i]! > 0 ? RESUMED_NOTE_PRICE : unexpected ? BROKEN_NOTE_PRICE : 0);
      let way = STAY;
      const farthest = mostAhead > value ? Math.min(i, MOST_MISSED + 1) : 0;
      for (let ahead = 1; ahead <= farthest; ahead++) {
        const left = i - ahead;
        if (before[left]! - (ahead - 1) * MISSED_PRICE <= value) continue;
        const cut = 1 - heardBefore[left]! / leastSteps[left]!;
        const broken = unexpected && heardBefore[left]! < BROKEN_SHARE * mostSteps[left]! ? BROKEN_NOTE_PRICE : 0;
        const other = before[left]! - (ahead - 1 + Math.max(cut, 0)) * MISSED_PRICE - broken;
        if (other > value) {
          value = other;
          way = ahead;
        }
      }
      mostAhead = Math.max(before[i]!, mostAhead - MISSED_PRICE) + ROUNDING;
      const enter = entry - enterPrice[i]!;
      if (enter > value) {
        value = enter;
        way = ENTER;
      }
      if ((i !== from || afterSilence) && top - jumpPrice > value) {
        const jump = top - jumpPrice - entryPrice[i]! - farPrice[Math.abs(i - from)]!;
        if (jump > value) {
          value = jump;
          way = JUMP;
        }
      }
      const soFar = way === STAY ? heardBefore[i]! : 0;
      heard[i] = soFar + voiced;
      let match = 2 * (salience[s * pitches + pitchOf[i]!] ?? 0) - 1;
      if (match > 0 && soFar >= mostSteps[i]!) match = 0;
      const here = value + unit * (voiced * match - silence);
      now[i] = here;
      back[s * count + i] = way;
      if (here > mostNow) {
        mostNow = here;
        mostAt = i;
      }
      if (here - leavePrice[i]! - tail > this.best) {
        this.best = here - leavePrice[i]! - tail;
        this.lastStep = s;
        this.lastState = i;
      }
    }
    this.from = mostAt;
    this.entry = Math.max(-MOST_OUTSIDE_PRICE, entry - unit * voiced * OUTSIDE_SOUND_PRICE);
    this.before = now;
    this.now = before;
    this.heardBefore = heard;
    this.heard = heardBefore;
  }
}
