import type { Part } from '../score/index.js';

/** How far a written ritardando or accelerando takes the tempo by its end. */
const BEND_FACTOR = { slower: 0.7, faster: 1.35 } as const;

/** Steps of the map; between them time runs evenly. */
const STEP_QUARTERS = 0.25;

function markedBpmAt(part: Part, quarters: number): number {
  let bpm = part.tempos[0]?.quarterBpm ?? 100;
  for (const tempo of part.tempos) if (tempo.atQuarters <= quarters + 1e-6) bpm = tempo.quarterBpm;
  return bpm;
}

function bendAt(part: Part, quarters: number): number {
  const bend = part.tempoBends.find((b) => quarters >= b.startQuarters && quarters < b.endQuarters);
  if (!bend) return 1;
  const share = (quarters - bend.startQuarters) / (bend.endQuarters - bend.startQuarters);
  return BEND_FACTOR[bend.kind] ** share;
}

/**
 * @param part the part
 * @param tempoFactor 1 is the marked tempo
 * @param tempoDrift tempo at the end over tempo at the beginning, on top of the factor
 * @returns seconds from the part's beginning for a score time in quarters, fermatas and breaths not counted
 */
export function tempoMap(part: Part, tempoFactor: number, tempoDrift: number): (quarters: number) => number {
  const last = part.bars.at(-1);
  const total = last ? last.startQuarters + last.lengthQuarters : 0;
  const seconds = [0];
  for (let q = 0; q < total; q += STEP_QUARTERS) {
    const middle = q + STEP_QUARTERS / 2;
    const bpm = markedBpmAt(part, middle) * bendAt(part, middle) * tempoFactor * tempoDrift ** (middle / total);
    seconds.push((seconds.at(-1) as number) + (STEP_QUARTERS * 60) / bpm);
  }
  return (quarters) => {
    const step = Math.max(0, Math.min(seconds.length - 2, Math.floor(quarters / STEP_QUARTERS)));
    const from = seconds[step] ?? 0;
    const to = seconds[step + 1] ?? from;
    return from + (to - from) * (quarters / STEP_QUARTERS - step);
  };
}
