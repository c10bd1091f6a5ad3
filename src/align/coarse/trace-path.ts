import type { SearchPlan } from './plan-search.js';
import type { PooledGrid } from './pool-grid.js';
import { ENTER, JUMP, type SearchResult, SILENCE_SECONDS, STAY } from './search-path.js';
import type { CoarsePath, Run } from './types.js';

/**
 * @param search result of the search
 * @param pooled evidence a step
 * @param plan what was expected
 * @returns the runs in order of time and the share of sounding time that fits
 *
 * Source: definition.
 */
export function tracePath(search: SearchResult, pooled: PooledGrid, plan: SearchPlan): CoarsePath {
  const { pitchOf, leastSteps, noteOf } = plan;
  const count = pitchOf.length;
  const runs: Run[] = [];
  let state = search.lastState;
  let step = search.lastStep;
  let onsets = new Map<number, number>();
  let endStep = step + 1;
  let matched = 0;
  let inState = 0;
  let firstSound: number | undefined;
  let silentSteps = 0;
  const longSilence = SILENCE_SECONDS / pooled.stepSeconds;
  while (step >= 0 && state >= 0) {
    const voiced = pooled.voicing[step]!;
    const salience = pooled.salience[step * pooled.pitches + pitchOf[state]!] ?? 0;
    matched += voiced * (2 * salience - 1);
    inState += voiced * salience;
    // a sound before a long silence is no longer this note: it may be what is left of another in the room
    if (voiced < 0.5 && firstSound !== undefined) silentSteps++;
    else if (voiced >= 0.5 && silentSteps < longSilence) [firstSound, silentSteps] = [step, 0];
    const way = search.back[step * count + state]!;
    if (way !== STAY) {
      onsets.set(state, inState >= leastSteps[state]! ? (firstSound ?? step) : Number.NaN);
      firstSound = undefined;
      silentSteps = 0;
      inState = 0;
    }
    if (way === ENTER || way === JUMP) {
      runs.unshift(toRun(onsets, step, endStep, pooled.stepSeconds, noteOf));
      onsets = new Map();
      endStep = step;
      if (way === ENTER) break;
      state = search.jumpFrom[step]!;
    } else {
      state -= way;
    }
    step--;
  }
  const sounding = pooled.voicing.reduce((sum, v) => sum + v, 0);
  return { runs, fit: sounding > 0 ? matched / sounding : 0 };
}

function toRun(
  onsets: Map<number, number>,
  startStep: number,
  endStep: number,
  stepSeconds: number,
  noteOf: readonly number[],
): Run {
  const stateList = [...onsets.keys()];
  const first = Math.min(...stateList);
  const last = Math.max(...stateList);
  const firstNote = noteOf[first]!;
  const lastNote = noteOf[last]!;
  const times = new Array<number>(lastNote - firstNote + 1).fill(Number.NaN);
  for (const [state, step] of onsets) times[noteOf[state]! - firstNote] = step * stepSeconds;
  return {
    firstNote,
    lastNote,
    startSeconds: startStep * stepSeconds,
    endSeconds: endStep * stepSeconds,
    onsets: times,
  };
}
