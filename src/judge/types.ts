import type { Reason } from '../base/index.js';
import type { Saying } from './criterion-sayings.js';
import type { Criterion, FindingKind, Weight } from './finding-kinds.js';
import type { FoundThere } from './observed/observation.js';

/** One finding of a kind, as data: words are looked up by its kind and facts. */
export interface FindingOf<K extends FindingKind> extends FoundThere<K> {
  /** other bars in which the same surely shows, in the order of the music */
  readonly alsoInBars: readonly string[];
  /** other bars in which it may show */
  readonly perhapsInBars: readonly string[];
  /** bar of another finding of this kind that speaks for this one too, so that pages need not repeat it */
  readonly ledByBar?: string;
  /** what it would weigh if it stood alone; present when that differs, because others go before it */
  readonly ownWeight?: Weight;
}

/** What is told to the player about one place. */
export type Finding = { [K in FindingKind]: FindingOf<K> }[FindingKind];

/** Points by the teacher's brief: support for a panel, never in its place. */
export interface CriterionPoints {
  readonly possible: number;
  /** to a tenth; null where nothing could be measured or judged, and for a take that the recorder cut off */
  readonly given: number | null;
}

/** One criterion in one line for tables. */
export interface CriterionLine {
  readonly criterion: Criterion;
  /** false when nothing could be said: left out by the brief, not measured, or nothing of the kind in the part */
  readonly judged: boolean;
  readonly fix: number;
  readonly watch: number;
  /** what was heard, the most telling first; empty where a reason stands instead */
  readonly sayings: readonly Saying[];
  /** why there is nothing to tell: left out by the brief, not measured, or nothing of the kind in the part */
  readonly reason?: Reason;
  /** places measured or not played, e.g. notes or groups, and those of them that are as asked for; 0 of 0 without any */
  readonly of: number;
  readonly met: number;
  /** those of them that were not played */
  readonly notPlayed: number;
  /** present when there is a brief */
  readonly points?: CriterionPoints;
}

/** How much of the part a take plays, in performed bars. */
export interface PlayedBars {
  readonly played: number;
  readonly of: number;
  /** what was played in one go of the part, by printed bars; a new one where bars are left out or the part goes back */
  readonly stretches: readonly { readonly bar: string; readonly toBar: string; readonly pass: number }[];
  /** how often the player stopped and began again */
  readonly restarts: number;
  /** `broken-off`: the player did not come to the end; `cut-off`: the recording ends before the playing does */
  readonly ending: 'whole' | 'broken-off' | 'cut-off';
}

/** Everything that is told about one take. */
export interface Judgement {
  /** absent when the take is not of this part */
  readonly played?: PlayedBars;
  /** most useful first */
  readonly findings: readonly Finding[];
  /** one line a criterion, always all nine, in the order of the brief's criteria */
  readonly criteria: readonly CriterionLine[];
}
