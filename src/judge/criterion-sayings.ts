import type { TempoBeat } from '../score/index.js';
import type { Leaning } from './observed/leaning.js';

/** The changes from one dynamic mark to the next, all together; sizes in dB in the direction that is written. */
export interface ContrastsHeard {
  readonly of: number;
  /** those that are as large as asked for */
  readonly plain: number;
  /** those that surely go the other way */
  readonly reversed: number;
  readonly usualDb: number;
  readonly smallestDb: number;
  readonly leastDb: number;
}

/** How a tempo is heard beside the marked one. */
export type TempoHeard = 'as-marked' | 'a-little-faster' | 'faster' | 'a-little-slower' | 'slower';

/** What can be said of a criterion, and the facts each saying needs. */
export interface SayingFacts {
  readonly 'notes-as-written': { readonly right: number; readonly of: number; readonly unclear: number };
  readonly 'groups-even': { readonly even: number; readonly of: number };
  readonly 'entries-in-time': { readonly inTime: number; readonly of: number };
  /** where notes of tuplets and beats are longer or shorter than the others */
  readonly 'groups-lean': Leaning;
  /** quarter notes a minute */
  readonly tempo: { readonly played: number; readonly beat?: TempoBeat };
  /** quarter notes a minute */
  readonly 'tempo-beside-mark': {
    readonly played: number;
    readonly marked: number;
    readonly heard: TempoHeard;
    readonly beat?: TempoBeat;
  };
  readonly 'contrasts-plain': ContrastsHeard;
  readonly 'contrasts-reversed': ContrastsHeard;
  readonly 'contrasts-alike': ContrastsHeard;
  readonly 'contrasts-mixed': ContrastsHeard;
  /** hairpins that change plainly, of those measured */
  readonly hairpins: { readonly plain: number; readonly of: number };
  /** over the whole take, `softer` is louder than `louder` */
  readonly 'wrong-order': { readonly softer: string; readonly louder: string };
  readonly 'slurs-joined': { readonly joined: number; readonly of: number };
  /** percent of their time */
  readonly 'staccato-sounds': { readonly percent: number };
  /** percent of their time between which half of the dotted notes sound */
  readonly 'staccato-half': { readonly from: number; readonly to: number };
  /** accented notes with a space behind them, and those that are held on, of those whose length is known */
  readonly 'accent-kinds': { readonly short: number; readonly long: number; readonly of: number };
  readonly 'tenuto-sounds': { readonly percent: number };
  readonly 'breaths-heard': { readonly heard: number; readonly of: number };
  /** full breaths that were only quick ones */
  readonly 'short-breaths': { readonly count: number };
  /** marked breaths where not all was played */
  readonly 'breaths-beyond': { readonly count: number };
  /** cents from A = 440 Hz; `heard`: whether an ear would call it off */
  readonly tuning: { readonly a4Hz: number; readonly cents: number; readonly heard: 'exact' | 'close' | 'off' };
  readonly register: { readonly register: 'low' | 'high'; readonly cents: number };
  readonly 'loud-notes': { readonly cents: number };
  /** long notes held as steadily as this player usually does, of those that were looked at */
  readonly 'notes-steady': { readonly steady: number; readonly of: number };
  /** notes out of silence that speak at once, of those that were looked at */
  readonly 'notes-speak': { readonly prompt: number; readonly of: number };
  /** long notes that move as regularly as vibrato */
  readonly 'with-vibrato': { readonly count: number };
  /** how far the level usually dips from one slurred note to the next */
  readonly 'air-under-slurs': { readonly db: number };
  /** harmonics over noise in long notes: a description, never a fault */
  readonly 'tone-over-breath': { readonly db: number };
  /** how bright long notes are when they are loud, beside soft ones: a description, never a fault */
  readonly 'loud-tone': { readonly beside: 'brighter' | 'as-bright' | 'darker' };
  readonly 'played-through': object;
  readonly restarts: { readonly count: number };
  readonly skips: { readonly count: number };
}

/** Code of what is said of a criterion. */
export type SayingCode = keyof SayingFacts;

/** One thing said of a criterion, as a code with facts. */
export type Saying = { [C in SayingCode]: { readonly code: C; readonly facts: SayingFacts[C] } }[SayingCode];
