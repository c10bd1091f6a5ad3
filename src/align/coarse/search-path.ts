import type { SearchPlan } from './plan-search.js';
import type { PooledGrid } from './pool-grid.js';
import { WayBack } from './way-back.js';

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
const ROUNDING = 1e-9;
const NO_WAY = Number.NEGATIVE_INFINITY;
const STATES_AT_ONCE = 256;
/** The best value of a step so far, its state, and more than any way ahead from a state looked at so far is worth. */
const MOST_NOW = 0;
const MOST_AT = 1;
const MOST_AHEAD = 2;

/** How a state was reached: from itself, by a jump, from before the part, or (1 …) from so many notes before. */
const STAY = 0;
export const JUMP = 255;
export const ENTER = 254;

/** One state of the best way, from the step at which it was entered until the next was. */
export interface EnteredState {
  readonly state: number;
  readonly step: number;
  /** 1 … MOST_MISSED + 1 notes ahead, ENTER from before the part, JUMP */
  readonly way: number;
}

/** The best way through the part. */
export interface SearchResult {
  /** the last first; empty when the part never begins */
  readonly entered: readonly EnteredState[];
  /** step after which the part is over; -1 when it never begins */
  readonly lastStep: number;
  /** most memory ever held for the way back */
  readonly bytes: number;
}

/**
 * @param pooled evidence a step
 * @param plan what is expected
 * @returns the best way
 *
 * Source: Viterbi search (Rabiner 1989); jumps leave from the one best state of a step, so time grows with steps × notes.
 */
export function searchPath(pooled: PooledGrid, plan: SearchPlan): SearchResult {
  const search = new PathSearch(pooled, plan);
  for (let step = 0; step < pooled.steps; step++) search.advance(step);
  return search.result();
}

class PathSearch {
  private readonly jumpFrom: Int32Array;
  /** step after which the part is over, its last state and how that was entered */
  private readonly last = new Int32Array(3).fill(-1);
  private best = Number.NEGATIVE_INFINITY;
  private readonly pooled: PooledGrid;
  private readonly plan: SearchPlan;
  private before: Float64Array;
  private now: Float64Array;
  /** sounding steps spent in each state so far */
  private heardBefore: Float64Array;
  private heard: Float64Array;
  private readonly wayBack: WayBack;
  /** how each state was entered */
  private enteredBefore: Int32Array;
  private entered: Int32Array;
  private readonly roots: Int32Array[];
  /** row of each state among those below; a pitch beyond the grid has the last one */
  private readonly rowOf: Int32Array;
  /** what is heard in a step, and what it is worth to a state, a pitch */
  private readonly salience: Float32Array;
  private readonly worth: Float64Array;
  /** from some states of a step to the next ones: MOST_NOW, MOST_AT, MOST_AHEAD */
  private readonly carried = new Float64Array(3);
  /** what a step that sounds takes off the price of cutting a state off */
  private readonly cutShare: Float64Array;
  private readonly soundAfter: Float64Array;
  private readonly enterPrice: Float64Array;
  private readonly leavePrice: Float64Array;
  private readonly farPrice: Float64Array;
  /** what beginning the part at a step is worth */
  private readonly entryWorth: Float64Array;
  /** 1 where a step follows a long silence */
  private readonly afterSilence: Uint8Array;
  /** best state of the step before */
  private from = 0;

  constructor(pooled: PooledGrid, plan: SearchPlan) {
    const { steps, voicing, pitches } = pooled;
    const { pitchOf, unit, entryPrice } = plan;
    const count = pitchOf.length;
    this.pooled = pooled;
    this.plan = plan;
    this.jumpFrom = new Int32Array(steps).fill(-1);
    this.before = new Float64Array(count).fill(Number.NEGATIVE_INFINITY);
    this.now = new Float64Array(count);
    this.heardBefore = new Float64Array(count);
    this.heard = new Float64Array(count);
    this.wayBack = new WayBack(count);
    this.enteredBefore = new Int32Array(count).fill(-1);
    this.entered = new Int32Array(count).fill(-1);
    this.roots = [this.enteredBefore, this.last.subarray(2)];
    this.rowOf = pitchOf.map((pitch) => (pitch >= 0 && pitch < pitches ? pitch : pitches));
    this.salience = new Float32Array(pitches + 1);
    this.worth = new Float64Array(pitches + 2);
    this.cutShare = plan.leastSteps.map((steps) => MISSED_PRICE / steps);
    this.soundAfter = new Float64Array(steps + 1);
    for (let s = steps - 1; s >= 0; s--) this.soundAfter[s] = this.soundAfter[s + 1]! + voicing[s]!;
    this.enterPrice = Float64Array.from(entryPrice, (price, i) => Math.min(JUMP_PRICE + price, i * MISSED_PRICE));
    this.leavePrice = Float64Array.from(pitchOf, (_, i) => Math.min(JUMP_PRICE, (count - 1 - i) * MISSED_PRICE));
    this.farPrice = Float64Array.from(pitchOf, (_, away) => FAR_JUMP_PRICE * Math.log2(1 + away));
    const longSilence = Math.max(SILENCE_SECONDS / pooled.stepSeconds, SILENCE_NOTES / unit);
    this.entryWorth = new Float64Array(steps);
    this.afterSilence = new Uint8Array(steps);
    for (let s = 0, entry = 0, silent = 0; s < steps; s++) {
      this.entryWorth[s] = entry;
      this.afterSilence[s] = silent >= longSilence ? 1 : 0;
      entry = Math.max(-MOST_OUTSIDE_PRICE, entry - unit * voicing[s]! * OUTSIDE_SOUND_PRICE);
      silent = voicing[s]! < 0.5 ? silent + 1 : 0;
    }
  }

  result(): SearchResult {
    const entered: EnteredState[] = [];
    const [lastStep, lastState, lastEntered] = this.last as unknown as [number, number, number];
    let state = lastState;
    for (const { step, way } of this.wayBack.trace(lastEntered)) {
      entered.push({ state, step, way });
      state = way === JUMP ? this.jumpFrom[step]! : state - way;
    }
    return { entered, lastStep, bytes: this.wayBack.bytes + this.jumpFrom.byteLength };
  }

  /** The best way into every state at one step, some states at a time: short calls are compiled for speed early. */
  advance(s: number): void {
    const { carried, enteredBefore, wayBack } = this;
    const count = this.rowOf.length;
    this.roots[0] = enteredBefore;
    wayBack.makeRoom(count + 2, this.roots);
    this.jumpFrom[s] = this.from;
    this.weigh(s);
    const byJump = wayBack.add(s, JUMP, enteredBefore[this.from]!);
    wayBack.add(s, ENTER, -1);
    carried.fill(Number.NEGATIVE_INFINITY);
    carried[MOST_AT] = 0;
    for (let i = 0; i < count; i += STATES_AT_ONCE) this.enterStates(s, i, Math.min(count, i + STATES_AT_ONCE), byJump);
    this.from = carried[MOST_AT]!;
    [this.before, this.now] = [this.now, this.before];
    [this.heardBefore, this.heard] = [this.heard, this.heardBefore];
    [this.enteredBefore, this.entered] = [this.entered, this.enteredBefore];
  }

  private enterStates(s: number, first: number, end: number, byJump: number): void {
    const { before, now, heardBefore, heard, enteredBefore, entered, carried, last, from, wayBack } = this;
    const { rowOf, worth, cutShare, enterPrice, leavePrice, farPrice } = this;
    const { unit, mostSteps, leastSteps, entryPrice, afterRest } = this.plan;
    const voiced = this.pooled.voicing[s]!;
    const worthMore = worth[worth.length - 1]!;
    const entry = this.entryWorth[s]!;
    const byEntry = byJump + 1;
    const afterSilence = this.afterSilence[s] === 1;
    const resumed = afterSilence && voiced >= 0.5;
    const jumped = before[from]! - (afterSilence ? JUMP_PRICE_AFTER_SILENCE : JUMP_PRICE);
    const tail = Math.min(MOST_OUTSIDE_PRICE, unit * OUTSIDE_SOUND_PRICE * this.soundAfter[s + 1]!);
    let { best } = this;
    let mostNow = carried[MOST_NOW]!;
    let mostAt = carried[MOST_AT]!;
    let mostAhead = carried[MOST_AHEAD]!;
    for (let i = first; i < end; i++) {
      const stayed = before[i]!;
      const jump = i !== from || afterSilence ? jumped - entryPrice[i]! - farPrice[Math.abs(i - from)]! : NO_WAY;
      let value = jump;
      let by = byJump;
      let sounded = voiced;
      let gain = worth[rowOf[i]!]!;
      // far from where the playing is most states are worth no more than a jump to them: their other ways need no look
      if (jump <= stayed || jump <= mostAhead || jump <= entry) {
        const unexpected = resumed && !afterRest[i];
        value = stayed - (resumed && heardBefore[i]! > 0 ? RESUMED_NOTE_PRICE : unexpected ? BROKEN_NOTE_PRICE : 0);
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
        const enter = entry - enterPrice[i]!;
        if (enter > value) {
          value = enter;
          way = ENTER;
        }
        if (jump > value) value = jump;
        else if (way === STAY) {
          by = enteredBefore[i]!;
          sounded += heardBefore[i]!;
          if (gain > worthMore && heardBefore[i]! >= mostSteps[i]!) gain = worthMore;
        } else by = way === ENTER ? byEntry : wayBack.add(s, way, enteredBefore[i - way]!);
      }
      const cutOff = MISSED_PRICE - heardBefore[i]! * cutShare[i]!;
      mostAhead = Math.max(cutOff > 0 ? stayed - cutOff : stayed, mostAhead - MISSED_PRICE) + ROUNDING;
      heard[i] = sounded;
      entered[i] = by;
      const here = value + gain;
      now[i] = here;
      if (here > mostNow) {
        mostNow = here;
        mostAt = i;
      }
      if (here - tail > best && here - leavePrice[i]! - tail > best) {
        best = here - leavePrice[i]! - tail;
        last[0] = s;
        last[1] = i;
        last[2] = by;
      }
    }
    this.best = best;
    carried[MOST_NOW] = mostNow;
    carried[MOST_AT] = mostAt;
    carried[MOST_AHEAD] = mostAhead;
  }

  /** Weighs what is heard in a step for each pitch; the last entry is what it is worth to a note that has had its time. */
  private weigh(s: number): void {
    const { salience, worth } = this;
    const { unit } = this.plan;
    const voiced = this.pooled.voicing[s]!;
    const silence = (1 - voiced) * INSIDE_SILENCE_PRICE;
    this.pooled.read(s, salience);
    for (let p = 0; p < salience.length; p++) worth[p] = unit * (voiced * (2 * salience[p]! - 1) - silence);
    worth[salience.length] = unit * (0 - silence);
  }
}
