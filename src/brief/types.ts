import type { BriefCriterion } from './criteria.js';

/** How a take is meant to be played: as written; all notes slurred; or below the tempo, for practice. */
export type PlayedWay = 'as-written' | 'all-slurred' | 'under-tempo';

/** `full`: the music leaves time for it; `quick`: a sip at the end of a note. */
export type BreathKind = 'full' | 'quick';

/** The tempo asked for, quarter notes a minute. */
export interface BriefTempo {
  readonly quarterBpm: number;
  readonly lowestQuarterBpm: number;
  readonly highestQuarterBpm: number;
}

/** A breath asked for after one performed note. */
export interface BriefBreath {
  /** index of the part's note after which it is taken */
  readonly index: number;
  readonly bar: string;
  readonly beat: number;
  readonly pass: number;
  readonly kind: BreathKind;
}

/** Bars the teacher wants looked at, and why. */
export interface BriefWatch {
  readonly bar: string;
  readonly toBar: string;
  readonly reason: string;
}

/** How long a fermata may last, times its written length. */
export interface FermataRange {
  readonly leastTimes: number;
  readonly mostTimes: number;
}

/** Another contrast than usual: at the marks in a bar, or wherever one mark follows the other. */
export type ContrastPlace =
  | { readonly bar: string; readonly leastDb: number }
  | { readonly from: string; readonly to: string; readonly leastDb: number };

/** Whether a criterion is judged, and what it is worth. */
export interface CriterionWish {
  readonly judged: boolean;
  readonly points: number;
}

/** The brief with every field filled in. */
export interface Brief {
  readonly title: string;
  /** null when neither the part nor the brief names a tempo */
  readonly tempo: BriefTempo | null;
  readonly played: PlayedWay;
  readonly breaths: readonly BriefBreath[];
  /** whether these are the teacher's own, other than those the part marks */
  readonly ownBreaths: boolean;
  readonly watch: readonly BriefWatch[];
  readonly fermata: FermataRange & { readonly bars: readonly (FermataRange & { readonly bar: string })[] };
  readonly contrast: { readonly leastDb: number; readonly places: readonly ContrastPlace[] };
  readonly hairpin: { readonly leastDb: number };
  readonly intonation: { readonly watchCents: number; readonly fixCents: number };
  readonly criteria: Readonly<Record<BriefCriterion, CriterionWish>>;
}
