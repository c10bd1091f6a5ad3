import type { Reason } from '../base/index.js';
import type { MisreadingKind } from '../score/index.js';

/** Every kind of finding, as in the result document. */
export type FindingKind =
  | 'accidental'
  | 'wrong-note'
  | 'missed-note'
  | 'added-note'
  | 'skipped-bars'
  | 'restart'
  | 'hesitation'
  | 'late-entry'
  | 'early-entry'
  | 'uneven-group'
  | 'rushing'
  | 'dragging'
  | 'off-tempo'
  | 'weak-contrast'
  | 'reversed-contrast'
  | 'weak-hairpin'
  | 'reversed-hairpin'
  | 'fermata-long'
  | 'fermata-short'
  | 'slur-broken'
  | 'staccato-long'
  | 'accent-weak'
  | 'breath-unmarked'
  | 'breath-late'
  | 'note-out-of-tune'
  | 'tuning-off'
  | 'went-well';

/** What a take is judged on. */
export type Criterion =
  | 'notes'
  | 'rhythm'
  | 'tempo'
  | 'dynamics'
  | 'articulation'
  | 'breath'
  | 'intonation'
  | 'continuity';

/** `fix`: sure and it matters; `watch`: worth a listen; `well`: praise. */
export type Weight = 'fix' | 'watch' | 'well';

/** What is told to the player about one place, in words, most useful first. */
export interface Finding {
  readonly kind: FindingKind;
  readonly criterion: Criterion;
  readonly weight: Weight;
  readonly misreading?: MisreadingKind;
  readonly bar: string;
  readonly toBar?: string;
  readonly pass: number;
  readonly beat?: number;
  /** part note concerned */
  readonly index?: number;
  /** last part note concerned when it is more than one */
  readonly toIndex?: number;
  /** seconds from the first sample */
  readonly onset?: number;
  readonly measured?: { readonly value: number; readonly unit: string; readonly expected?: string };
  /** bar of another finding of this kind that speaks for this one too, so that pages need not repeat it */
  readonly ledByBar?: string;
  /** what it would weigh if it stood alone; present when that differs, because others go before it */
  readonly ownWeight?: Weight;
  /** one or two plain sentences to the player */
  readonly text: string;
  /** one plain sentence on how to practise it; empty for praise */
  readonly practice: string;
}

/** Points by the teacher's brief: support for a panel, never in its place. */
export interface CriterionPoints {
  readonly possible: number;
  /** to a tenth; null where nothing could be measured or judged */
  readonly given: number | null;
}

/** One criterion in one line for tables. */
export interface CriterionLine {
  readonly criterion: Criterion;
  /** false when nothing could be said: left out by the brief, not measured, or nothing of the kind in the part */
  readonly judged: boolean;
  readonly fix: number;
  readonly watch: number;
  /** e.g. "148 of 151 notes as written"; empty where a measure has a reason instead */
  readonly summary: string;
  /** why there is nothing to tell: left out by the brief, not measured, or nothing of the kind in the part */
  readonly reason?: Reason;
  /** places measured, e.g. notes or groups, and those of them that are as asked for; 0 of 0 where there are none */
  readonly of: number;
  readonly met: number;
  /** present when there is a brief */
  readonly points?: CriterionPoints;
}

/** Everything that is told about one take. */
export interface Judgement {
  readonly findings: readonly Finding[];
  /** one line a criterion, always all eight, in the order of the type above */
  readonly criteria: readonly CriterionLine[];
}
