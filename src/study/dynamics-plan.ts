import { secondsBetween } from '../brief/index.js';
import type { Hairpin, Part } from '../score/index.js';
import type { HairpinStep, LevelStep } from './types.js';

/** Marks from soft to loud. Source: common practice. */
const SCALE = ['pppp', 'ppp', 'pp', 'p', 'mp', 'mf', 'f', 'ff', 'fff', 'ffff'];
/** A mark this soon after a hairpin's end is where it arrives, quarters. */
const ARRIVES_WITHIN = 1;

/** Levels and what leads from one to the next. */
export interface DynamicsPlan {
  readonly levels: readonly LevelStep[];
  readonly hairpins: readonly HairpinStep[];
}

/**
 * @param part the part, with the tempo asked for
 * @returns its levels with the steps between them, and its hairpins with their length and where they arrive, as performed
 *
 * The order of marks: common practice.
 */
export function dynamicsPlan(part: Part): DynamicsPlan {
  const levels = part.dynamics.map(({ mark, bar, atQuarters, index }, i): LevelStep => {
    const before = part.dynamics[i - 1];
    const steps = before === undefined ? null : SCALE.indexOf(mark) - SCALE.indexOf(before.mark);
    return { mark, bar, beat: part.notes[index]?.beat ?? 1, atQuarters, steps };
  });
  return { levels, hairpins: part.hairpins.map((hairpin) => hairpinStep(part, hairpin)) };
}

function hairpinStep(part: Part, hairpin: Hairpin): HairpinStep {
  const { kind, bar, toBar, pass, startQuarters, endQuarters, index } = hairpin;
  const inForce = part.dynamics.filter(({ atQuarters }) => atQuarters <= startQuarters + 1e-6).at(-1);
  const swollen = part.hairpins.some(
    (other) => other.endQuarters <= startQuarters + 1e-6 && other.startQuarters >= (inForce?.atQuarters ?? 0),
  );
  const arrives = part.dynamics.find(
    ({ atQuarters }) => atQuarters > startQuarters + 1e-6 && atQuarters <= endQuarters + ARRIVES_WITHIN,
  );
  return {
    kind,
    bar,
    beat: part.notes[index]?.beat ?? 1,
    toBar,
    pass,
    startQuarters,
    endQuarters,
    bars: barsBetween(part, startQuarters, endQuarters),
    seconds: secondsBetween(part.tempos, startQuarters, endQuarters),
    fromMark: swollen ? null : (inForce?.mark ?? null),
    toMark: arrives?.mark ?? null,
  };
}

function barsBetween(part: Part, from: number, to: number): number {
  const bars = part.bars.reduce((sum, { startQuarters, lengthQuarters }) => {
    const shared = Math.min(to, startQuarters + lengthQuarters) - Math.max(from, startQuarters);
    return sum + (shared > 0 ? shared / lengthQuarters : 0);
  }, 0);
  return Math.round(bars * 4) / 4;
}
