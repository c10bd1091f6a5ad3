import type { TakeResult } from '../../result/index.js';
import type { Part } from '../../score/index.js';

type Tempo = Exclude<TakeResult['tempo'], { notMeasured: string }>;

/**
 * @param tempo what was played, quarter notes a minute
 * @param tempos what is printed, quarter notes a minute
 * @param quarters of one beat
 * @returns the same in beats a minute, for what counts in beats
 */
export function inBeats(
  tempo: Tempo,
  tempos: Part['tempos'],
  quarters: number,
): { readonly tempo: Tempo; readonly tempos: Part['tempos'] } {
  const counted = <T extends { readonly quarterBpm: number }>(one: T): T => ({
    ...one,
    quarterBpm: one.quarterBpm / quarters,
  });
  return {
    tempo: { ...tempo, playedQuarterBpm: tempo.playedQuarterBpm / quarters, bars: tempo.bars.map(counted) },
    tempos: tempos.map(counted),
  };
}
