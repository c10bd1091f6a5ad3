import type { Brief } from '../brief/index.js';
import { listed } from './names.js';
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
  const [slow, ...faster] = metronomeSteps(plan.tempo.quarterBpm);
  const underTempo = brief.played === 'under-tempo';
  const allSlurred = brief.played === 'all-slurred';
  return [
    readStep(plan),
    {
      title: 'Slow and slurred',
      text: `Metronome at ${slow} quarter notes a minute. Play everything slurred, two bars at a time, with a full, even sound. Go on when two bars are right three times in a row.`,
    },
    ...(allSlurred ? [] : [tonguedStep(plan, slow as number)]),
    ...dynamicsStep(plan),
    underTempo
      ? {
          title: 'Stay below the tempo',
          text: 'This time it is practised below its tempo. Choose the fastest speed at which everything stays easy, and keep it.',
        }
      : {
          title: 'Up to the tempo',
          text: `Raise the metronome in steps: ${listed([slow, ...faster].map(String))}. Go up only when a step is right three times in a row; when it fails, go back one step, not to the beginning.`,
        },
    {
      title: 'Once through',
      text: 'Play it from beginning to end without stopping, whatever happens, and record it. Listen with the part in front of you and mark two places for next time.',
    },
  ];
}

function readStep({ traps, entries }: Pick<StudyPlan, 'traps' | 'entries'>): PracticeStep {
  const bars = [...new Set(traps.filter(({ rank }) => rank < 3).map(({ bar }) => bar))];
  const some = bars.slice(0, MOST_BARS_NAMED);
  const more = bars.length > some.length ? ' and the others marked above' : '';
  const where =
    bars.length === 0
      ? 'Name the notes of each line aloud'
      : `Name the notes of bar${bars.length === 1 ? '' : 's'} ${more === '' ? listed(some) : some.join(', ')}${more} aloud, each with its sign`;
  return {
    title: 'Read before you play',
    text: `${where}. Then finger them without sound, and clap the rhythm${entries.length > 0 ? ' of every bar with a rest in it' : ' once through'}.`,
  };
}

function tonguedStep({ articulation }: Pick<StudyPlan, 'articulation'>, slow: number): PracticeStep {
  const bars = [...new Set(articulation.flatMap((pattern) => pattern.bars))].slice(0, 4);
  const where = bars.length === 0 ? '' : ` Take the pattern of bar ${bars[0]} on one single note first.`;
  return {
    title: 'The same, now tongued',
    text: `Back to ${slow}. Put in tongue, slurs and dots as written. The air goes on as if it were still slurred.${where}`,
  };
}

function dynamicsStep({ levels, hairpins }: Pick<StudyPlan, 'levels' | 'hairpins'>): PracticeStep[] {
  if (levels.length + hairpins.length === 0) return [];
  return [
    {
      title: 'How loud, on one note',
      text: 'Play the plan of dynamics above on one comfortable note, bar by bar, before you play it on the notes. Make the softest and the loudest place really different.',
    },
  ];
}

/** From slow to the tempo, in even numbers as metronomes have them; the last is the tempo itself. */
function metronomeSteps(quarterBpm: number): number[] {
  const slow = Math.max(SLOWEST, 4 * Math.round((START_SHARE * quarterBpm) / 4));
  const target = Math.round(quarterBpm);
  const size = Math.max(2, 2 * Math.round((target - slow) / STEPS / 2));
  const steps: number[] = [];
  for (let bpm = slow; bpm < target - size / 2; bpm += size) steps.push(bpm);
  return [...steps, target];
}
