import type { MeasureId } from '../../standards/index.js';
import type { TroubleKind } from './weeks-standing.js';

/** How a bar stands on the latest day, and since when. */
export interface BarState {
  readonly status: 'fixed' | 'eased' | 'returning' | 'still' | 'new' | 'grown' | 'not-judged' | 'seen';
  /** ISO 8601 day, null when it is not judged */
  readonly since: string | null;
}

/** Takes of one day. */
export interface DayTakes {
  /** ISO 8601 day */
  readonly date: string;
  readonly takes: number;
}

/** A week or a take that does not count, and why. */
export interface Gap {
  /** ISO 8601 day, null when it is not known */
  readonly date: string | null;
  readonly why: 'no-take' | 'not-this-score' | 'too-poor' | 'failed';
  readonly file: string | null;
  /** what was said about a file that could not be read */
  readonly detail: string | null;
}

/** How many days with several takes each measure's noise rests on. */
export interface NoiseFacts {
  readonly measures: readonly { readonly noise: { readonly fromTakes: { readonly days: number } } }[];
}

/** A cost of the tongue, dB, and whether it is surely more than what is usual, or surely less. */
export interface TongueCost {
  readonly db: number;
  readonly beside: 'more' | 'less' | 'unclear';
}

/** The same bars slurred for practice and tongued on one day; null where it is not known. */
export interface BesideSlurredFacts {
  /** ISO 8601 day */
  readonly date: string;
  readonly sag: TongueCost | null;
  readonly softer: TongueCost | null;
}

/** What the next lesson is for. */
export type GoalFacts =
  | { readonly about: 'bars' | 'listen'; readonly kind: TroubleKind; readonly bars: readonly string[] }
  | { readonly about: 'throughout'; readonly kind: TroubleKind }
  | { readonly about: 'measure'; readonly measure: MeasureId }
  | { readonly about: 'hear-again'; readonly bars: readonly string[] }
  | { readonly about: 'keep' };
