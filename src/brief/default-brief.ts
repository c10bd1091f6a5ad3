import type { Part } from '../score/index.js';
import { breathsOfPart } from './breaths-of-part.js';
import { CRITERIA } from './criteria.js';
import type { Brief, BriefTempo } from './types.js';

/** The tempo may be this share off on both sides. Source: working value, common practice. */
const TEMPO_SHARE = 0.1;

/**
 * @param part the part
 * @returns what holds where a brief says nothing
 *
 * Source: the part; thresholds as in the standards of the room `judge`, which name their sources.
 */
export function defaultBrief(part: Part): Brief {
  const first = part.tempos[0];
  return {
    title: part.title,
    tempo: first?.printed === true ? tempoAround(first.quarterBpm) : null,
    played: 'as-written',
    breaths: breathsOfPart(part),
    watch: [],
    fermata: { leastTimes: 1.25, mostTimes: 3, bars: [] },
    contrast: { leastDb: 3, places: [] },
    hairpin: { leastDb: 3 },
    intonation: { watchCents: 25, fixCents: 35 },
    criteria: Object.fromEntries(CRITERIA.map((name) => [name, { judged: true, points: 1 }])) as Brief['criteria'],
  };
}

/**
 * @param quarterBpm quarter notes a minute
 * @returns the tempo with the usual range around it, whole numbers where that keeps it inside
 *
 * Source: {@link TEMPO_SHARE}.
 */
export function tempoAround(quarterBpm: number): BriefTempo {
  const whole = (share: number): number => Math.round(quarterBpm * share);
  return {
    quarterBpm,
    lowestQuarterBpm: Math.min(whole(1 - TEMPO_SHARE), quarterBpm),
    highestQuarterBpm: Math.max(whole(1 + TEMPO_SHARE), quarterBpm),
  };
}
