import type { Brief } from '../brief/index.js';
import { type Part, QUARTERS_OF_BEAT, tempoBeat } from '../score/index.js';
import type { TempoChange, TempoPlan } from './types.js';

/** Range around a tempo that had to be assumed. */
const ASSUMED_SHARE = 0.1;

/**
 * @param part the part, with the tempo asked for
 * @param brief the teacher's brief
 * @returns the tempo, its range, and where it changes
 */
export function tempoPlan(part: Part, brief: Brief): TempoPlan {
  const first = part.tempos[0]?.quarterBpm ?? 96;
  const beat = tempoBeat(part);
  const quarters = QUARTERS_OF_BEAT[beat];
  const jumps = part.tempos.slice(1).map(({ atQuarters, quarterBpm }) => ({
    atQuarters,
    change: { to: quarters * Math.round(quarterBpm / quarters), beat } satisfies TempoChange,
  }));
  const bends = part.tempoBends.map(({ kind, startQuarters, endQuarters }) => ({
    atQuarters: startQuarters,
    change: { bend: kind, until: placeAt(part, endQuarters) } satisfies TempoChange,
  }));
  const changes = [...jumps, ...bends]
    .sort((a, b) => a.atQuarters - b.atQuarters)
    .flatMap(({ atQuarters, change }) => {
      const place = placeAt(part, atQuarters);
      return place === null ? [] : [{ ...place, change }];
    });
  const seen = new Set<string>();
  return {
    quarterBpm: first,
    beat,
    marked: brief.tempo !== null,
    lowestQuarterBpm: brief.tempo?.lowestQuarterBpm ?? Math.round(first * (1 - ASSUMED_SHARE)),
    highestQuarterBpm: brief.tempo?.highestQuarterBpm ?? Math.round(first * (1 + ASSUMED_SHARE)),
    changes: changes.filter((change) => {
      const key = JSON.stringify(change);
      return !seen.has(key) && seen.add(key);
    }),
  };
}

/** Bar and beat at a score time, null at or after the end. */
function placeAt(part: Part, quarters: number): { bar: string; beat: number } | null {
  const inBar = part.bars.find(
    ({ startQuarters, lengthQuarters }) =>
      quarters >= startQuarters - 1e-6 && quarters < startQuarters + lengthQuarters - 1e-6,
  );
  if (inBar === undefined) return null;
  const missing = inBar.beats - (inBar.lengthQuarters * inBar.beatType) / 4;
  const pickUp = inBar.barIndex === 0 && missing > 0 ? missing : 0;
  return { bar: inBar.bar, beat: ((quarters - inBar.startQuarters) * inBar.beatType) / 4 + 1 + pickUp };
}
