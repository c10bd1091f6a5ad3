import { criterionLines } from './criterion-lines.js';
import { doubtByEcho } from './doubt-by-echo.js';
import type { Weight } from './finding-kinds.js';
import { judgeArticulation } from './judges/articulation.js';
import { judgeBreath } from './judges/breath.js';
import { judgeContinuity } from './judges/continuity.js';
import { judgeDynamics } from './judges/dynamics.js';
import { judgeFermatas } from './judges/fermatas.js';
import { judgeIntonation } from './judges/intonation.js';
import { judgeMissingAndAdded } from './judges/missing-and-added.js';
import { judgePitches } from './judges/pitches.js';
import { judgePraise } from './judges/praise.js';
import { judgeRhythm } from './judges/rhythm.js';
import { judgeSound } from './judges/sound.js';
import { judgeTempo } from './judges/tempo.js';
import { observe } from './observe.js';
import type { JudgeInput } from './observed/judge-input.js';
import type { Observation } from './observed/observation.js';
import { withoutConsequences } from './one-cause.js';
import { type LedObservation, shareCauses } from './share-causes.js';
import { standardsFor } from './standards-for.js';
import type { Finding, Judgement } from './types.js';
import { whatWasPlayed } from './what-was-played.js';
import { withoutDoubtful } from './without-doubtful.js';

/** Every judge of the playing; a new one is one file and one line. */
const JUDGES: readonly ((input: JudgeInput) => Observation[])[] = [
  judgePitches,
  judgeMissingAndAdded,
  judgeContinuity,
  judgeDynamics,
  judgeFermatas,
  judgeRhythm,
  judgeArticulation,
  judgeBreath,
  judgeIntonation,
  judgeTempo,
  judgeSound,
  judgePraise,
];

/** More than a handful of things to fix helps nobody. */
const MOST_FIXES = 7;
const RANK: Readonly<Record<Weight, number>> = { fix: 0, watch: 1, well: 2 };

/**
 * Decides what to tell the player.
 *
 * @param input part, alignment and measurements; standards default to those of the brief, without one to
 * those of the house
 * @returns findings, most useful first, and one line a criterion, as codes and facts; a take that is not of this part has
 * no findings
 *
 * Source: standards name theirs.
 */
export function judgeTake(input: Omit<JudgeInput, 'standards'> & Partial<Pick<JudgeInput, 'standards'>>): Judgement {
  const standards = standardsFor(input.brief);
  const full: JudgeInput = { standards, ...input };
  const played = whatWasPlayed(full);
  if (full.alignment.fit !== 'this-part') return { findings: [], criteria: criterionLines(full, [], [], played) };
  const all = doubtByEcho(full, withoutConsequences(JUDGES.flatMap((judge) => observe(judge, full))));
  const noticed = withoutDoubtful(full, all).sort(byUse);
  let fixes = 0;
  const findings = shareCauses(noticed).map((led) => {
    const { weight } = led.observation;
    return findingOf(led, weight === 'fix' && ++fixes > MOST_FIXES ? 'watch' : weight);
  });
  const sorted = [...findings].sort((a, b) => RANK[a.weight] - RANK[b.weight]);
  return { findings: sorted, criteria: criterionLines(full, sorted, noticed, played), played: played.bars };
}

function findingOf(led: LedObservation, weight: Weight): Finding {
  const { observation, alsoInBars, perhapsInBars, ledByBar, ownWeight = observation.weight } = led;
  const { size: _, ...found } = observation;
  return {
    ...found,
    weight,
    alsoInBars,
    perhapsInBars,
    ...(ledByBar === undefined ? {} : { ledByBar }),
    ...(ownWeight === weight ? {} : { ownWeight }),
  };
}

function byUse(a: Observation, b: Observation): number {
  return RANK[a.weight] - RANK[b.weight] || b.size - a.size || (a.index ?? 0) - (b.index ?? 0);
}
