import type { Brief } from '../brief/index.js';
import { QUARTERS_OF_BEAT } from '../score/index.js';
import type { PracticeStep, StudyPlan } from './types.js';

/** Practice begins at this share of the tempo and rises in about this many steps. Source: working choice, common practice. */
const START_SHARE = 0.6;
const STEPS = 4;
const SLOWEST = 30;
const MOST_BARS_NAMED = 8;

/**
 * A way to learn the étude: read, slow and slurred, then tongued, dynamics, up to the tempo, whole.
 *
 * @param plan what the étude asks for
 * @param brief the teacher's brief
 * @returns steps in order
 *
 * Source: common practice: passages are learnt slurred before they are articulated, and slow before fast.
 */
export function practicePlan(
  plan: Pick<StudyPlan, 'traps' | 'articulation' | 'entries' | 'levels' | 'hairpins' | 'tempo'>,
  brief: Brief,
): PracticeStep[] {
  const { beat } = plan.tempo;
  const quarters = QUARTERS_OF_BEAT[beat];
  const steps = metronomeSteps(plan.tempo.quarterBpm / quarters).map((bpm) => bpm * quarters);
  const slow = steps[0] as number;
  return [
    readStep(plan),
    { kind: 'slow', quarterBpm: slow, beat },
    ...(brief.played === 'all-slurred' ? [] : [tonguedStep(plan, slow)]),
    ...(plan.levels.length + plan.hairpins.length === 0 ? [] : [{ kind: 'dynamics' } as const]),
    brief.played === 'under-tempo' ? { kind: 'under-tempo' } : { kind: 'up-to-tempo', steps, beat },
    { kind: 'once-through' },
  ];
}

function readStep({ traps, entries }: Pick<StudyPlan, 'traps' | 'entries'>): PracticeStep {
  const bars = [...new Set(traps.filter(({ rank }) => rank < 3).map(({ bar }) => bar))];
  const some = bars.slice(0, MOST_BARS_NAMED);
  return { kind: 'read', bars: some, more: bars.length > some.length, rests: entries.length > 0 };
}

function tonguedStep(
  { articulation, tempo }: Pick<StudyPlan, 'articulation' | 'tempo'>,
  quarterBpm: number,
): PracticeStep {
  return { kind: 'tongued', quarterBpm, beat: tempo.beat, patternBar: articulation[0]?.bars[0] ?? null };
}

/** From slow to the tempo, in even numbers as metronomes have them; the last is the tempo itself. */
function metronomeSteps(beatBpm: number): number[] {
  const slow = Math.max(SLOWEST, 4 * Math.round((START_SHARE * beatBpm) / 4));
  const target = Math.round(beatBpm);
  const size = Math.max(2, 2 * Math.round((target - slow) / STEPS / 2));
  const steps: number[] = [];
  for (let bpm = slow; bpm < target - size / 2; bpm += size) steps.push(bpm);
  return [...steps, target];
}
