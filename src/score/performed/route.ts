import type { PrintedBar } from '../printed/types.js';
import type { Remark } from '../remark-table.js';
import { type Ending, endingsOf } from './endings.js';

/** A bar in performed order. */
export interface RouteStep {
  readonly barIndex: number;
  /** the bar before it in performed order is not the one before it in print */
  readonly jumped: boolean;
}

/** The performed order and what in it could not be followed. */
export interface Route {
  readonly steps: readonly RouteStep[];
  readonly remarks: readonly Remark[];
}

interface RepeatFrame {
  readonly start: number;
  pass: number;
}

interface Walk {
  readonly bars: readonly PrintedBar[];
  readonly endings: readonly (Ending | null)[];
  readonly steps: RouteStep[];
  readonly remarks: Remark[];
  readonly frames: RepeatFrame[];
  /** where a repeat without a beginning goes back to */
  sectionStart: number;
  /** D.C. and D.S. that were followed */
  readonly jumpsTaken: Set<number>;
  afterJump: null | { alFine: boolean; alCoda: boolean; withRepeats: boolean };
  codaTaken: boolean;
}

/** Longest performed order, in bars, whatever the repeats ask for. */
const MOST_PERFORMED_BARS = 20_000;

/**
 * Repeats, endings, D.C., D.S., Fine and Coda unfolded. A repeat without a beginning goes back to the end of the last
 * repeated section or to the start; nested repeats are played again each time; after D.C. and D.S. repeats are not taken
 * and the last ending is played, unless the words say "with repeats". Signs of one bar count at its end.
 *
 * @param bars bars as printed
 * @returns the performed order
 *
 * Source: MusicXML 4.0, `repeat`, `ending`, `sound`; D.C. and D.S. without repeats: common practice.
 */
export function routeOf(bars: readonly PrintedBar[]): Route {
  const walk: Walk = {
    bars,
    endings: endingsOf(bars),
    steps: [],
    remarks: [],
    frames: [],
    sectionStart: 0,
    jumpsTaken: new Set(),
    afterJump: null,
    codaTaken: false,
  };
  let at: number | null = enter(0, walk);
  let before = -1;
  while (at !== null && at < bars.length && walk.steps.length < MOST_PERFORMED_BARS) {
    walk.steps.push({ barIndex: at, jumped: at !== before + 1 });
    before = at;
    const next = leave(at, walk);
    at = next === null ? null : enter(next, walk);
  }
  if (walk.steps.length >= MOST_PERFORMED_BARS) walk.remarks.push({ code: 'endless-repeats', facts: {} });
  return { steps: walk.steps, remarks: walk.remarks };
}

/** From a bar to the next one that is played: endings of other passes are stepped over, if this pass has one at all. */
function enter(from: number, walk: Walk): number {
  let at = from;
  for (let ending = walk.endings[at]; ending != null && at === ending.from; ending = walk.endings[at]) {
    const pass = passFor(ending, walk);
    if (ending.numbers.has(pass) || !ending.groupNumbers.has(pass)) break;
    at = ending.to + 1;
  }
  if (walk.bars[at]?.forwardRepeat && !repeatsOff(walk) && walk.frames.at(-1)?.start !== at) {
    walk.frames.push({ start: at, pass: 1 });
  }
  return at;
}

function passFor(ending: Ending, walk: Walk): number {
  if (repeatsOff(walk)) return ending.lastNumber;
  return walk.frames.at(-1)?.pass ?? 1;
}

function repeatsOff(walk: Walk): boolean {
  return walk.afterJump !== null && !walk.afterJump.withRepeats;
}

/** What comes after a bar, null at the end. */
function leave(at: number, walk: Walk): number | null {
  const bar = walk.bars[at] as PrintedBar;
  const jump = walk.afterJump;
  if (jump !== null && !walk.codaTaken && bar.toCoda !== null && !jump.alFine) {
    const coda = codaFor(at, bar.toCoda, walk.bars);
    if (coda !== null) {
      walk.codaTaken = true;
      return coda;
    }
    walk.remarks.push({ code: 'no-coda', facts: { bar: bar.number } });
  }
  const back = repeatFrom(at, bar, walk);
  if (back !== null) return back;
  if (jump !== null && bar.fine && (!jump.alCoda || walk.codaTaken)) return null;
  return jumpFrom(at, bar, walk) ?? at + 1;
}

function repeatFrom(at: number, bar: PrintedBar, walk: Walk): number | null {
  const ending = walk.endings[at] ?? null;
  const closes = ending !== null && at === ending.to && ending.lastOfGroup;
  if (repeatsOff(walk)) return null;
  if (bar.backwardRepeatTimes > 0) {
    const total = ending === null ? bar.backwardRepeatTimes : ending.lastNumber;
    if (walk.frames.length === 0) walk.frames.push({ start: walk.sectionStart, pass: 1 });
    const frame = walk.frames.at(-1) as RepeatFrame;
    if (frame.pass < total) {
      frame.pass++;
      return frame.start;
    }
  }
  if ((bar.backwardRepeatTimes > 0 && ending === null) || closes) {
    walk.frames.pop();
    walk.sectionStart = at + 1;
  }
  return null;
}

function jumpFrom(at: number, bar: PrintedBar, walk: Walk): number | null {
  if ((!bar.daCapo && bar.dalSegno === null) || walk.jumpsTaken.has(at)) return null;
  walk.jumpsTaken.add(at);
  const target = bar.daCapo ? 0 : segnoFor(at, bar.dalSegno ?? '', walk.bars);
  if (target === null) {
    walk.remarks.push({ code: 'no-segno', facts: { bar: bar.number } });
    return null;
  }
  walk.frames.length = 0;
  walk.sectionStart = target;
  walk.afterJump = { alFine: bar.alFine, alCoda: bar.alCoda, withRepeats: bar.withRepeats };
  return target;
}

/** The segno of that name, else the last one before the jump. */
function segnoFor(at: number, name: string, bars: readonly PrintedBar[]): number | null {
  const named = bars.findLastIndex((bar, i) => i <= at && bar.segno === name);
  const found = named >= 0 ? named : bars.findLastIndex((bar, i) => i <= at && bar.segno !== null);
  return found >= 0 ? found : null;
}

/** The coda of that name, else any. */
function codaFor(at: number, name: string, bars: readonly PrintedBar[]): number | null {
  const named = bars.findIndex((bar, i) => i !== at && bar.coda === name);
  const found = named >= 0 ? named : bars.findIndex((bar, i) => i !== at && bar.coda !== null);
  return found >= 0 ? found : null;
}
