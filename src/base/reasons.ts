import type { CodeArguments, Coded, CodeTable } from './coded.js';

/** Reasons why nothing can be said of a criterion that are no reasons of a measure. */
const CRITERION_REASONS = {
  'brief-all-slurred': {},
  'brief-under-tempo': {},
  'brief-leaves-out': {},
  'not-played': {},
  'level-moved': {},
  'no-level-change': {},
  'no-groups-or-rests': {},
  'no-slur-or-staccato': {},
  'no-breath-marked': {},
  'no-breath-heard': {},
  'sound-coded': {},
} as const satisfies CodeTable;

/**
 * Every reason why there is no number or no judgement, with the facts that are told along with it. What each is in words
 * stands in the room `words`.
 */
export const REASONS = {
  // one note, one place
  'note-not-heard': {},
  'note-too-short': {},
  'note-unsteady': {},
  'note-in-noise': {},
  'second-ear-too-short': {},
  'second-ear-too-low': {},
  'second-ear-unclear': {},
  'neighbours-not-heard': {},
  'tempo-unknown-here': {},
  'fermata-leaves-open': {},
  'fermatas-close-phrases': {},
  'too-few-in-hairpin': {},
  'too-few-under-this-mark': {},
  'too-few-under-mark': { mark: 'text' },
  // the whole take
  'no-note-heard': {},
  'too-few-silences': {},
  'too-few-pauses': {},
  'too-few-long-notes': {},
  'decay-hidden': {},
  'room-rings': {},
  'held-with-vibrato': {},
  'recording-hisses': {},
  'too-few-pitches': {},
  'too-few-bars': {},
  'too-few-groups': {},
  'too-few-loud-and-soft': {},
  'loud-and-soft-alike': {},
  'registers-unknown': {},
  'other-part': {},
  'nothing-clear': {},
  'not-reviewed': {},
  // a criterion of which nothing can be said
  ...CRITERION_REASONS,
  /** the measure it rests on has no number, for a reason of its own */
  'criterion-not-measured': { why: 'code' },
  // a number followed over weeks
  'number-not-kept': {},
  'no-second-take-of-a-day': {},
  'no-notes-to-count': {},
  'no-groups': {},
  'no-entries': {},
  'no-fermatas': {},
  'no-tempo-mark': {},
  'too-few-bars-to-compare': {},
  'no-contrasts': {},
  'no-hairpins': {},
  'no-slurs': {},
  'no-staccato': {},
  'no-breaths': {},
  'too-few-held-notes': {},
  'too-few-tongued-places': {},
  'too-few-slurred-notes': {},
  'tongued-as-slurred': {},
  'brief-without-sound': {},
  // results of earlier programs
  'not-kept-then': {},
  /** an older result tells the reason in a sentence of its own, in the language with this tag */
  'told-there': { said: 'text', language: 'text' },
} as const satisfies CodeTable;

/** Why there is no number or no judgement. */
export type Reason = Coded<typeof REASONS>;

/** A reason's code and, where it has some, its facts. */
export type ReasonArguments = CodeArguments<typeof REASONS>;

/**
 * @param reason why a criterion has nothing to tell
 * @returns the same as the criterion's line says it: a reason of the measure beneath is said to be one
 */
export function criterionReason(reason: Reason): Reason {
  return reason.code in CRITERION_REASONS ? reason : { code: 'criterion-not-measured', facts: { why: reason } };
}
