import { QUARTERS_OF_BEAT, type TempoBeat } from '../../score/index.js';
import { NUMBERS } from './numbers.js';

/**
 * @param quarterBpm quarter notes a minute
 * @param beat what the metre counts; quarters where nothing is said
 * @returns the number of those beats
 */
export function beatsIn(quarterBpm: number, beat: TempoBeat = 'quarter'): number {
  return quarterBpm / QUARTERS_OF_BEAT[beat];
}

/** What a metronome counts, in a minute. */
export const BEATS_A_MINUTE: Readonly<Record<TempoBeat, string>> = {
  quarter: 'quarter notes a minute',
  'dotted-quarter': 'dotted quarters a minute',
  half: 'half notes a minute',
};

/**
 * @param quarterBpm quarter notes a minute
 * @param beat what the metre counts; quarters where nothing is said
 * @returns e.g. "96 quarter notes a minute", in whole numbers
 */
export function tempoIn(quarterBpm: number, beat: TempoBeat = 'quarter'): string {
  return `${NUMBERS.whole(beatsIn(quarterBpm, beat))} ${BEATS_A_MINUTE[beat]}`;
}
