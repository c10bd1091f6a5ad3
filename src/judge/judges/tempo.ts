import { isMeasured } from '../../base/index.js';
import type { JudgeInput } from '../judge-input.js';
import type { Observation } from '../observation.js';

/**
 * @param input one take
 * @returns an observation when the whole take is well off the marked tempo
 *
 * Source: standard tempoWatch.
 */
export function judgeTempo(input: JudgeInput): Observation[] {
  const { tempo } = input.measurements;
  if (!isMeasured(tempo) || tempo.markedQuarterBpm === null) return [];
  const off = tempo.playedQuarterBpm / tempo.markedQuarterBpm - 1;
  if (Math.abs(off) <= input.standards.tempoWatch.value) return [];
  const first = input.part.notes[0]!;
  const measured = {
    value: tempo.playedQuarterBpm,
    unit: 'quarter notes a minute',
    expected: `about ${tempo.markedQuarterBpm}`,
  };
  const facts = { played: tempo.playedQuarterBpm, marked: tempo.markedQuarterBpm };
  return [
    {
      kind: 'off-tempo',
      criterion: 'tempo',
      weight: 'watch',
      size: Math.abs(off) * 3,
      bar: first.bar,
      pass: first.pass,
      measured,
      facts,
    },
  ];
}
