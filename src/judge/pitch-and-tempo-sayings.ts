import type { TempoBeat } from '../score/index.js';
import type { Saying, SayingFacts, TempoHeard } from './criterion-sayings.js';

/** A tempo nearer than this sounds the same. Source: about 3 % is noticed (Drake & Botte 1993). */
const NOTICED = 0.03;
/** Nearer than this two tones sound the same. Source: just noticeable (Hill & Summers 2007). */
const IN_TUNE_CENTS = 10;

/**
 * @param played quarter notes a minute
 * @param marked quarter notes a minute; null when no tempo is marked
 * @param beat what the metre counts
 * @returns what is said of the tempo
 *
 * Source: constants above.
 */
export function tempoSaying(played: number, marked: number | null, beat: TempoBeat): Saying {
  if (marked === null) return { code: 'tempo', facts: { played, beat } };
  return { code: 'tempo-beside-mark', facts: { played, marked, heard: heardBeside(played, marked), beat } };
}

function heardBeside(played: number, marked: number): TempoHeard {
  const off = played / marked - 1;
  if (Math.abs(off) <= NOTICED) return 'as-marked';
  const way = off > 0 ? 'faster' : 'slower';
  return Math.abs(off) <= 2 * NOTICED ? `a-little-${way}` : way;
}

/**
 * @param a4Hz the A of the take
 * @param cents from A = 440 Hz, sharp positive
 * @returns what is said of the tuning; decided by the cents as they are told, whole
 *
 * Source: constants above.
 */
export function tuningSaying(a4Hz: number, cents: number): Saying {
  const away = Math.abs(Math.round(cents));
  const heard: SayingFacts['tuning']['heard'] = away > IN_TUNE_CENTS ? 'off' : away === 0 ? 'exact' : 'close';
  return { code: 'tuning', facts: { a4Hz, cents, heard } };
}
