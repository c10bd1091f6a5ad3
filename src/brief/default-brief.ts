import type { Part } from '../score/index.js';
import { STANDARDS } from '../standards/index.js';
import { breathsOfPart } from './breaths-of-part.js';
import { type BriefCriterion, CRITERIA, WITHOUT_POINTS } from './criteria.js';
import type { Brief, BriefTempo, CriterionWish } from './types.js';

/**
 * @param part the part
 * @returns what holds where a brief says nothing
 *
 * Source: the part; the standards, which name their sources.
 */
export function defaultBrief(part: Part): Brief {
  const first = part.tempos[0];
  return {
    title: part.title,
    tempo: first?.printed === true ? tempoAround(first.quarterBpm) : null,
    played: 'as-written',
    breaths: breathsOfPart(part),
    ownBreaths: false,
    watch: [],
    fermata: { leastTimes: STANDARDS.fermataLeast.value, mostTimes: STANDARDS.fermataMost.value, bars: [] },
    contrast: { leastDb: STANDARDS.contrastLeast.value, places: [] },
    hairpin: { leastDb: STANDARDS.hairpinLeast.value },
    intonation: { watchCents: STANDARDS.noteWatch.value, fixCents: STANDARDS.noteFix.value },
    criteria: Object.fromEntries(CRITERIA.map((name) => [name, wish(name)])) as Brief['criteria'],
  };
}

function wish(name: BriefCriterion): CriterionWish {
  return { judged: true, points: WITHOUT_POINTS.has(name) ? 0 : 1 };
}

/**
 * @param quarterBpm quarter notes a minute
 * @returns the tempo with the usual range around it, whole numbers where that keeps it inside
 *
 * Source: standard tempoWatch.
 */
export function tempoAround(quarterBpm: number): BriefTempo {
  const off = STANDARDS.tempoWatch.value;
  const whole = (share: number): number => Math.round(quarterBpm * share);
  return {
    quarterBpm,
    lowestQuarterBpm: Math.min(whole(1 - off), quarterBpm),
    highestQuarterBpm: Math.max(whole(1 + off), quarterBpm),
  };
}
