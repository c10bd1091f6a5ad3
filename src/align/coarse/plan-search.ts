import type { Part } from '../../score/index.js';
import type { PitchGrid } from '../grid/pitch-grid.js';
import type { PooledGrid } from './pool-grid.js';

/** A note is worth no more than so many times its expected length, so that a long tuning note earns little. */
const MOST_STRETCH = 1.4;
/** A note left before this share of its expected length is, in part, passed over. */
const LEAST_STRETCH = 0.3;
/** Beginning again in the middle of a bar is less likely than at its first note. */
const MID_BAR_PRICE = 0.25;

/** What the coarse search knows of the part: one state a note that takes time. */
export interface SearchPlan {
  /** index of each state's note in the part */
  readonly noteOf: readonly number[];
  /** row of the grid at which each state sounds */
  readonly pitchOf: Int32Array;
  /** average notes in a step */
  readonly unit: number;
  /** steps for which a state is worth something */
  readonly mostSteps: Float64Array;
  /** steps below which leaving a state counts, in part, as passing it over */
  readonly leastSteps: Float64Array;
  /** 1 where a rest is written before the state */
  readonly afterRest: Uint8Array;
  /** price of jumping into a state */
  readonly entryPrice: Float64Array;
}

/**
 * @param part the part
 * @param grid for its lowest semitone
 * @param pooled the take at the pace of the search
 * @param offsetSemitones whole semitones by which the take sounds above the part
 * @param times how often the part is played, 1 where it is once from beginning to end: sets the pace that is expected
 * @returns pitches and expected lengths of the states, at the average pace of the take
 */
export function planSearch(
  part: Part,
  grid: PitchGrid,
  pooled: PooledGrid,
  offsetSemitones: number,
  times = 1,
): SearchPlan {
  const states = part.notes.filter((n) => !n.grace);
  const played = pooled.voicing.reduce((sum, v) => sum + v, 0) / times;
  const quarters = states.reduce((sum, n) => sum + n.durationQuarters, 0);
  return {
    noteOf: states.map((n) => n.index),
    pitchOf: Int32Array.from(states, (n) => n.soundingMidi + offsetSemitones - grid.lowestMidi),
    unit: 1 / Math.max(1, played / states.length),
    mostSteps: Float64Array.from(states, (n) => Math.max(2, (MOST_STRETCH * n.durationQuarters * played) / quarters)),
    leastSteps: Float64Array.from(states, (n) => Math.max(1, (LEAST_STRETCH * n.durationQuarters * played) / quarters)),
    afterRest: Uint8Array.from(states, (n) => (n.restBeforeQuarters > 0 ? 1 : 0)),
    entryPrice: Float64Array.from(states, (n, i) => (n.bar === states[i - 1]?.bar ? MID_BAR_PRICE : 0)),
  };
}
