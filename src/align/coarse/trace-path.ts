import type { SearchPlan } from './plan-search.js';
import type { PooledGrid } from './pool-grid.js';
import { ENTER, JUMP, type SearchResult, SILENCE_SECONDS } from './search-path.js';
import type { CoarsePath, Run } from './types.js';

/**
 * @param search result of the search
 * @param pooled evidence a step
 * @param plan what was expected
 * @returns the runs in order of time and the share of sounding time that fits
 */
export function tracePath(search: SearchResult, pooled: PooledGrid, plan: SearchPlan): CoarsePath {
  const { pitchOf, leastSteps, noteOf } = plan;
  const runs: Run[] = [];
  const saliences = new Float32Array(pooled.pitches);
  let onsets = new Map<number, number>();
  let last = search.lastStep;
  let endStep = last + 1;
  let matched = 0;
  const longSilence = SILENCE_SECONDS / pooled.stepSeconds;
  for (const { state, step: first, way } of search.entered) {
    let inState = 0;
    let firstSound: number | undefined;
    let silentSteps = 0;
    for (let step = last; step >= first; step--) {
      const voiced = pooled.voicing[step]!;
      pooled.read(step, saliences);
      const salience = saliences[pitchOf[state]!] ?? 0;
      matched += voiced * (2 * salience - 1);
      inState += voiced * salience;
      // a sound before a long silence is no longer this note: it may be what is left of another in the room
      if (voiced < 0.5 && firstSound !== undefined) silentSteps++;
      else if (voiced >= 0.5 && silentSteps < longSilence) [firstSound, silentSteps] = [step, 0];
    }
    onsets.set(state, inState >= leastSteps[state]! ? (firstSound ?? first) : Number.NaN);
    if (way === ENTER || way === JUMP) {
      runs.push(toRun(onsets, first, endStep, pooled.stepSeconds, noteOf));
      onsets = new Map();
      endStep = first;
    }
    last = first - 1;
  }
  const sounding = pooled.voicing.reduce((sum, v) => sum + v, 0);
  const heard = new Set<number>();
  const reached = new Set<number>();
  for (const run of runs) {
    run.onsets.forEach((t, k) => {
      reached.add(run.firstNote + k);
      if (Number.isFinite(t)) heard.add(run.firstNote + k);
    });
  }
  return {
    runs: runs.reverse(),
    fit: sounding > 0 ? matched / sounding : 0,
    heard: heard.size / Math.max(1, noteOf.length),
    heardOfReached: heard.size / Math.max(1, reached.size),
  };
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
